/** The chance against the limit, and the gaps of all rings, on one scale of gaps with one line for the limit. */
import { yieldFigures } from '../../../sim/export/verdict-figures';
import { gapText, shareWithInterval } from '../../../sim/wording/figures';
import { ChartFrame } from '../../charts/chart-frame';
import { finerTicks, type GapScale, gapScale } from '../../charts/gap-scale';
import { TextTableView } from '../../charts/text-table';
import { YieldCurve } from '../../charts/yield-curve';
import type { Display } from '../../inputs/field-props';
import { formatLength } from '../../inputs/format-quantity';
import { useDocument } from '../../state/document-store';
import { yieldAt } from './at-limit';
import { curveLine } from './curve-line';
import { GapChart } from './gap-chart';
import { limitMoves } from './limit-moves';
import { useSteadyScale } from './use-steady-scale';
import type { WeighedMethod } from './use-verdict';

/** How far the scale goes beyond the limit at first, times the limit. */
const ROOM = 2.2;

function axisText(mm: number, display: Display): string {
  return formatLength(mm, display, { decimals: display === 'metric' ? 2 : 3 });
}

export function VerdictCharts({ methods }: { methods: readonly WeighedMethod[] }) {
  const display = useDocument((state) => state.project.display);
  const limitMm = useDocument((state) => state.project.limits.showGapMm);
  // The best method and some room on both sides of the limit; a method that is far off may leave the scale.
  const bestMm = Math.min(...methods.map(({ result }) => result.prediction.showGapMm.p95));
  const scale = useSteadyScale(gapScale(Math.max(ROOM * limitMm, bestMm), limitMm, display), limitMm);
  const lines = methods.map((method) => curveLine(method, method.result.sample.otherwiseGoodShowGapMm, scale, limitMm));
  const limitText = gapText(limitMm, display);
  const plain = (mm: number): string => axisText(mm, display);
  const unit = display === 'metric' ? 'mm' : 'in';
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
          limitText={limitText}
          formatGap={plain}
          summary={methods
            .map(({ name, result }) => `${name}: ${shareWithInterval(result.prediction.yield)} at ${limitText}`)
            .join('; ')}
          {...limitMoves}
        />
      </ChartFrame>
      <GapChart
        methods={methods}
        scale={scale}
        display={display}
        limitMm={limitMm}
        formatGap={plain}
        moves={limitMoves}
      />
    </>
  );
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
