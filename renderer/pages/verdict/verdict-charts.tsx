/** The chance against the limit, and the gaps of all rings, on one scale of gaps with one line for the limit. */
import { useState } from 'react';
import { yieldFigures } from '../../../sim/export/verdict-figures';
import { gapText, limitText, shareWithInterval } from '../../../sim/wording/figures';
import { ChartFrame } from '../../charts/chart-frame';
import { finerTicks, type GapScale, gapScale } from '../../charts/gap-scale';
import { TextTableView } from '../../charts/text-table';
import { YieldCurve } from '../../charts/yield-curve';
import type { Display } from '../../inputs/field-props';
import { formatLength } from '../../inputs/format-quantity';
import { useAfterDrawing } from '../../state/after-drawing';
import { yieldAt } from '../../state/at-limit';
import { useDocument } from '../../state/document-store';
import { useShownProject } from '../../state/shown-project';
import type { WeighedMethod } from '../../state/use-verdict';
import { curveLine } from './curve-line';
import { GapChart } from './gap-chart';
import { limitMoves } from './limit-moves';
import { useSteadyScale } from './use-steady-scale';

/** How far the scale goes beyond the limit at first, times the limit. */
const ROOM = 2.2;

/** The words of an axis. Always the same functions: charts are drawn anew only for other ones. */
const AXIS_TEXT: Readonly<Record<Display, (mm: number) => string>> = {
  metric: (mm) => formatLength(mm, 'metric', { decimals: 2 }),
  inch: (mm) => formatLength(mm, 'inch', { decimals: 3 }),
};

export function VerdictCharts({ methods }: { methods: readonly WeighedMethod[] }) {
  const display = useDocument((state) => state.project.display);
  const limitMm = useShownProject().limits.showGapMm;
  // The best method and some room on both sides of the limit; a method that is far off may leave the scale.
  const bestMm = Math.min(...methods.map(({ result }) => result.prediction.showGapMm.p95));
  const scale = useSteadyScale(gapScale(Math.max(ROOM * limitMm, bestMm), limitMm, display), limitMm);
  const lines = methods.map((method) => curveLine(method, method.result.sample.otherwiseGoodShowGapMm, scale, limitMm));
  // Fifty dots a method take a while to draw; figures need not wait for them.
  const calmRings = useAfterDrawing(useSameRings(methods));
  const limit = limitText(limitMm, display);
  const plain = AXIS_TEXT[display];
  const unit = display === 'metric' ? 'mm' : 'inches';
  return (
    <>
      <ChartFrame
        title="Chance of a good piece against the limit"
        caption={
          <>
            Out of 100 pieces, how many are good if the widest gap that shows may be so many {unit}.{' '}
            <span data-not-pictured>Drag the line to move the limit.</span>
          </>
        }
        table={<CurveTable methods={methods} scale={scale} display={display} />}
        figures={() => yieldFigures(methods.map(lineOf), finerTicks(scale), display)}
      >
        <YieldCurve
          lines={lines}
          scale={scale}
          limitMm={limitMm}
          limitText={limit}
          formatGap={plain}
          summary={methods
            .map(({ name, result }) => `${name}: ${shareWithInterval(result.prediction.yield)} at ${limit}`)
            .join('; ')}
          {...limitMoves}
        />
      </ChartFrame>
      <GapChart
        methods={calmRings}
        scale={scale}
        display={display}
        limitMm={limitMm}
        formatGap={plain}
        moves={limitMoves}
      />
    </>
  );
}

/** The methods as they were as long as their rings are the same: a limit that moves makes no new ones. */
function useSameRings(methods: readonly WeighedMethod[]): readonly WeighedMethod[] {
  const [kept, setKept] = useState(methods);
  const isSame =
    kept.length === methods.length &&
    kept.every(({ index, name, isFresh, result }, i) => {
      const now = methods[i];
      return (
        now?.index === index && now.name === name && now.isFresh === isFresh && now.result.sample === result.sample
      );
    });
  if (!isSame) setKept(methods);
  return isSame ? kept : methods;
}

const lineOf = ({ name, result }: WeighedMethod) => ({ name, at: (mm: number) => yieldAt(result, mm) });

interface CurveTableProps {
  methods: readonly WeighedMethod[];
  scale: GapScale;
  display: Display;
}

function CurveTable({ methods, scale, display }: CurveTableProps) {
  const rows = scale.ticksMm
    .slice(1)
    .map((mm) => [gapText(mm, display), ...methods.map(({ result }) => shareWithInterval(yieldAt(result, mm)))]);
  return <TextTableView table={{ head: ['Limit', ...methods.map(({ name }) => name)], rows }} />;
}
