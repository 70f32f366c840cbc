/** The chance against the limit, and fifty dots a method, on one scale of gaps with one line for the limit. */
import { useMemo } from 'react';
import { quantileDots } from '../../../sim/statistics/dots';
import { countAtMost } from '../../../sim/statistics/ecdf';
import { dotsText } from '../../../sim/wording/explain';
import { gapText, shareWithInterval } from '../../../sim/wording/figures';
import { ChartFrame } from '../../charts/chart-frame';
import { DOTS, DotRows } from '../../charts/dot-rows';
import { type GapScale, gapScale } from '../../charts/gap-scale';
import { YieldCurve } from '../../charts/yield-curve';
import type { Display } from '../../inputs/field-props';
import { formatLength } from '../../inputs/format-quantity';
import { beginGesture, edit, endGesture, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';
import { yieldAt } from './at-limit';
import { useSteadyScale } from './use-steady-scale';
import type { WeighedMethod } from './use-verdict';

const CURVE_POINTS = 81;
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
  const samples = methods.map(({ result }) => result.sample);
  const lines = useCurves(methods, scale);
  const limitText = gapText(limitMm, display);
  const plain = (mm: number): string => axisText(mm, display);
  const unit = display === 'metric' ? 'mm' : 'in';
  const rows = methods.map(({ index, name, isFresh }, i) => {
    const gapsMm = [...quantileDots(samples[i]?.showGapMm ?? new Float64Array(), DOTS)];
    return { index, name, isFresh, gapsMm, sentence: dotsText(gapsMm, limitMm, display) };
  });
  return (
    <>
      <ChartFrame
        title="Chance of a good piece against the limit"
        caption={`Out of 100 pieces, how many are good if the widest gap that shows may be so many ${unit}. Drag the line to move the limit.`}
        table={<CurveTable methods={methods} scale={scale} display={display} />}
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
          onLimitChange={(mm) => edit(withSection('limits', { showGapMm: mm }))}
          onGestureStart={beginGesture}
          onGestureEnd={endGesture}
        />
      </ChartFrame>
      <ChartFrame
        title="The widest gap that shows, ring by ring"
        caption={`Each dot is one ring in ${DOTS}, at its widest gap in ${unit}; left of 0 there is no gap to speak of. Hollow dots are over the limit.`}
        table={<DotTable rows={rows} scale={scale} display={display} />}
      >
        <DotRows rows={rows} scale={scale} limitMm={limitMm} formatGap={plain} />
      </ChartFrame>
    </>
  );
}

function useCurves(methods: readonly WeighedMethod[], scale: GapScale) {
  return useMemo(
    () =>
      methods.map(({ index, name, isFresh, result }) => ({
        index,
        name,
        isFresh,
        valueAtLimit: result.prediction.yield.value,
        points: Array.from({ length: CURVE_POINTS }, (_, i) => {
          const limitMm = (scale.maxMm * i) / (CURVE_POINTS - 1);
          return { limitMm, ...yieldAt(result, limitMm) };
        }),
      })),
    [methods, scale],
  );
}

function CurveTable({
  methods,
  scale,
  display,
}: {
  methods: readonly WeighedMethod[];
  scale: GapScale;
  display: Display;
}) {
  const limits = scale.ticksMm.slice(1);
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Limit</th>
          {methods.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {limits.map((mm) => (
          <tr key={mm}>
            <th scope="row">{gapText(mm, display)}</th>
            {methods.map(({ name, result }) => (
              <td key={name}>{shareWithInterval(yieldAt(result, mm))}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface DotTableProps {
  rows: readonly { name: string; gapsMm: readonly number[] }[];
  scale: GapScale;
  display: Display;
}

function DotTable({ rows, scale, display }: DotTableProps) {
  const edges = scale.ticksMm.slice(1);
  const upTo = (gapsMm: readonly number[], mm: number): number => countAtMost(gapsMm, mm);
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Dots at or under</th>
          {rows.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {edges.map((mm) => (
          <tr key={mm}>
            <th scope="row">{gapText(mm, display)}</th>
            {rows.map(({ name, gapsMm }) => (
              <td key={name}>{upTo(gapsMm, mm)}</td>
            ))}
          </tr>
        ))}
        <tr>
          <th scope="row">any gap</th>
          {rows.map(({ name, gapsMm }) => (
            <td key={name}>{gapsMm.length}</td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}
