/** The lines and bands of chances against the gap, drawn anew only when they or the room for them change. */
import { memo } from 'react';
import { Area, CartesianGrid, ComposedChart, Line, XAxis, YAxis } from 'recharts';
import { markOf } from '../parts/method-mark';
import type { GapScale } from './gap-scale';
import { TICK_TEXT_REM } from './plot-surface';

export interface CurvePoint {
  limitMm: number;
  value: number;
  low: number;
  high: number;
}

export interface Curve {
  /** Place of the method in the project. */
  index: number;
  name: string;
  /** Ascending, all lines at the same limits, the last one at the end of the scale. */
  points: readonly CurvePoint[];
}

/** Where the plot stands in its box, px. */
export interface CurveRoom {
  widthPx: number;
  heightPx: number;
  topPx: number;
  bottomPx: number;
  axisPx: number;
  textPx: number;
}

interface CurvesProps {
  lines: readonly Curve[];
  scale: GapScale;
  /** Follows from the unit, as the scale does. */
  formatGap: (mm: number) => string;
  room: CurveRoom;
}

const CHANCES = [0, 0.25, 0.5, 0.75, 1];

/** The custom property that softens a line which is not fresh, without drawing it anew. */
export const freshnessOf = (line: number): `--${string}` => `--freshness-${line}`;

function isSameCurve(a: Curve, b: Curve | undefined): boolean {
  return a.points === b?.points && a.index === b.index && a.name === b.name;
}

function isSamePicture(before: CurvesProps, now: CurvesProps): boolean {
  const sizes = Object.keys(now.room) as (keyof CurveRoom)[];
  return (
    before.scale === now.scale &&
    sizes.every((size) => before.room[size] === now.room[size]) &&
    before.lines.length === now.lines.length &&
    before.lines.every((line, i) => isSameCurve(line, now.lines[i]))
  );
}

export const Curves = memo(function Curves({ lines, scale, formatGap, room }: CurvesProps) {
  const { widthPx, heightPx, topPx, bottomPx, axisPx, textPx } = room;
  const rows = (lines[0]?.points ?? []).map((point, i) => ({
    limitMm: point.limitMm,
    points: lines.map((line) => line.points[i]),
  }));
  type Row = (typeof rows)[number];
  const tick = { fontSize: TICK_TEXT_REM * textPx, fill: 'var(--ink-soft)' };
  return (
    <ComposedChart
      width={widthPx}
      height={heightPx}
      data={rows}
      margin={{ top: topPx, right: 0, bottom: 0, left: 0 }}
      accessibilityLayer={false}
    >
      <CartesianGrid stroke="var(--hairline)" vertical={false} />
      <XAxis
        dataKey="limitMm"
        type="number"
        domain={[0, scale.maxMm]}
        ticks={scale.ticksMm}
        tickFormatter={formatGap}
        interval={0}
        height={bottomPx}
        stroke="var(--edge)"
        tick={tick}
        tickMargin={0.25 * textPx}
      />
      <YAxis
        domain={[0, 1]}
        ticks={CHANCES}
        tickFormatter={(chance: number) => `${chance * 100}`}
        width={axisPx}
        stroke="var(--edge)"
        tick={tick}
      />
      {lines.map((line, i) => (
        <Area
          key={`band of ${line.name}`}
          dataKey={({ points }: Row) => [points[i]?.low ?? 0, points[i]?.high ?? 0]}
          stroke="none"
          fill={markOf(line.index).colour}
          fillOpacity={0.2}
          isAnimationActive={false}
          activeDot={false}
        />
      ))}
      {lines.map((line, i) => (
        <Line
          key={line.name}
          dataKey={({ points }: Row) => points[i]?.value ?? 0}
          stroke={markOf(line.index).colour}
          strokeWidth={2}
          strokeOpacity={`var(${freshnessOf(i)}, 1)`}
          dot={false}
          activeDot={false}
          isAnimationActive={false}
        />
      ))}
    </ComposedChart>
  );
}, isSamePicture);
