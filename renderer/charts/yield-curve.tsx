/** The chance that a piece is good enough, against how tight good enough is: one line a method, with its interval. */
import { Area, CartesianGrid, ComposedChart, Line, XAxis, YAxis } from 'recharts';
import { MethodLabel, markOf } from '../app/method-mark';
import type { GapScale } from './gap-scale';
import { LimitHandle } from './limit-handle';
import { spreadLabels } from './spread-labels';
import { useSize } from './use-size';

export interface CurvePoint {
  limitMm: number;
  value: number;
  low: number;
  high: number;
}

export interface YieldLine {
  /** Place of the method in the project. */
  index: number;
  name: string;
  isFresh: boolean;
  /** Ascending, all lines at the same limits, the last one at the end of the scale. */
  points: readonly CurvePoint[];
  /** The chance at the limit that is set. */
  valueAtLimit: number;
}

interface YieldCurveProps {
  lines: readonly YieldLine[];
  scale: GapScale;
  limitMm: number;
  formatGap: (mm: number) => string;
  /** With its unit. */
  limitText: string;
  /** What the chart shows, for those who do not see it. */
  summary: string;
  onLimitChange: (mm: number) => void;
  onGestureStart: () => void;
  onGestureEnd: () => void;
}

const HEIGHT_REM = 20;
const TOP_REM = 2.25;
const BOTTOM_REM = 2;
const AXIS_REM = 3.25;
const LABEL_REM = 2.6;
const CHANCES = [0, 0.25, 0.5, 0.75, 1];

export function YieldCurve({ lines, scale, limitMm, formatGap, limitText, summary, ...limit }: YieldCurveProps) {
  const [box, { widthPx, textPx }] = useSize<HTMLDivElement>();
  const heightPx = HEIGHT_REM * textPx;
  const topPx = TOP_REM * textPx;
  const plotPx = heightPx - topPx - BOTTOM_REM * textPx;
  const yOf = (chance: number): number => topPx + (1 - chance) * plotPx;
  const rows = (lines[0]?.points ?? []).map((point, i) => ({
    limitMm: point.limitMm,
    points: lines.map((line) => line.points[i]),
  }));
  type Row = (typeof rows)[number];
  const ends = lines.map((line) => yOf(line.points.at(-1)?.value ?? 0));
  // Lines that end together are told in the order in which they stand at the limit.
  const wanted = lines.map((line, i) => (ends[i] ?? 0) - line.valueAtLimit);
  const labels = spreadLabels(wanted, LABEL_REM * textPx, topPx, topPx + plotPx);
  const tick = { fontSize: 0.8125 * textPx, fill: 'var(--ink-soft)' };
  return (
    <div className="chart-grid" style={{ height: heightPx }}>
      <div className="plot" ref={box}>
        <div role="img" aria-label={summary} className="plot-picture">
          {widthPx > 0 && (
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
                height={BOTTOM_REM * textPx}
                stroke="var(--edge)"
                tick={tick}
                tickMargin={0.25 * textPx}
              />
              <YAxis
                domain={[0, 1]}
                ticks={CHANCES}
                tickFormatter={(chance: number) => `${chance * 100}`}
                width={AXIS_REM * textPx}
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
                  strokeOpacity={line.isFresh ? 1 : 0.6}
                  dot={false}
                  activeDot={false}
                  isAnimationActive={false}
                />
              ))}
            </ComposedChart>
          )}
        </div>
        <div
          className="plot-overlay"
          style={{ insetBlockStart: topPx, height: plotPx, insetInlineStart: AXIS_REM * textPx }}
        >
          <LimitHandle
            scale={scale}
            valueMm={limitMm}
            valueText={limitText}
            {...limit}
            onChange={limit.onLimitChange}
          />
          {limitMm <= scale.maxMm &&
            lines.map(({ index, name, valueAtLimit }) => (
              <svg
                key={name}
                className="crossing"
                viewBox="0 0 12 12"
                aria-hidden="true"
                style={{
                  insetInlineStart: `${(limitMm / scale.maxMm) * 100}%`,
                  insetBlockStart: `${(1 - valueAtLimit) * 100}%`,
                }}
              >
                <path d={markOf(index).path} fill={markOf(index).colour} />
              </svg>
            ))}
        </div>
      </div>
      <svg
        className="leaders"
        aria-hidden="true"
        height={heightPx}
        preserveAspectRatio="none"
        viewBox={`0 0 10 ${heightPx}`}
      >
        {lines.map(({ name }, i) => (
          <path key={name} d={`M0 ${ends[i] ?? 0}L10 ${labels[i] ?? 0}`} vectorEffect="non-scaling-stroke" />
        ))}
      </svg>
      <ul className="end-labels">
        {lines.map(({ index, name, isFresh }, i) => (
          <li key={name} className={isFresh ? undefined : 'softened'} style={{ insetBlockStart: labels[i] ?? 0 }}>
            <MethodLabel index={index} name={name} />
          </li>
        ))}
      </ul>
    </div>
  );
}
