/** The chance that a piece is good enough, against how tight good enough is: one line a method, with its interval. */
import { MethodLabel, markOf } from '../parts/method-mark';
import { useAfterDrawing } from '../state/after-drawing';
import { type Curve, type CurveRoom, Curves, freshnessOf } from './curves';
import type { GapScale } from './gap-scale';
import { LimitHandle } from './limit-handle';
import { spreadLabels } from './spread-labels';
import { useSize } from './use-size';

export interface YieldLine extends Curve {
  isFresh: boolean;
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
const SOFTENED = 0.6;

export function YieldCurve({ lines, scale, limitMm, formatGap, limitText, summary, ...limit }: YieldCurveProps) {
  const [box, { widthPx, textPx }] = useSize<HTMLDivElement>();
  // Lines through new rings take a while to draw; figures and marks need not wait for them.
  const calmLines = useAfterDrawing(lines);
  const heightPx = HEIGHT_REM * textPx;
  const topPx = TOP_REM * textPx;
  const plotPx = heightPx - topPx - BOTTOM_REM * textPx;
  const room: CurveRoom = {
    widthPx,
    heightPx,
    topPx,
    bottomPx: BOTTOM_REM * textPx,
    axisPx: AXIS_REM * textPx,
    textPx,
  };
  const yOf = (chance: number): number => topPx + (1 - chance) * plotPx;
  const ends = lines.map((line) => yOf(line.points.at(-1)?.value ?? 0));
  // Lines that end together are told in the order in which they stand at the limit.
  const wanted = lines.map((line, i) => (ends[i] ?? 0) - line.valueAtLimit);
  const labels = spreadLabels(wanted, LABEL_REM * textPx, topPx, topPx + plotPx);
  const freshness = Object.fromEntries(lines.map(({ isFresh }, i) => [freshnessOf(i), isFresh ? 1 : SOFTENED]));
  return (
    <div className="chart-grid" style={{ height: heightPx }}>
      <div className="plot" ref={box}>
        <div role="img" aria-label={summary} className="plot-picture" style={freshness}>
          {widthPx > 0 && <Curves lines={calmLines} scale={scale} formatGap={formatGap} room={room} />}
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
