/** Several figures over the number of test rounds, side by side: each a mark with its interval, none joined. */
import { markOf } from '../parts/method-mark';
import type { EvenScale } from './even-scale';
import { PlainPlot, type PlotPlace } from './plain-plot';

export interface RoundsPoint {
  rounds: number;
  /** null where there is no such figure; `text` then says why. */
  value: number | null;
  low: number;
  high: number;
  text: string;
}

export interface RoundsFigure {
  /** What is measured, with its unit. */
  name: string;
  points: readonly RoundsPoint[];
  scale: EvenScale;
  format: (value: number) => string;
}

interface RoundsChartProps {
  figures: readonly RoundsFigure[];
  /** Ascending. */
  rounds: readonly number[];
  /** The rounds that are set. */
  chosen: number;
  /** Place of the method in the project. */
  methodIndex: number;
}

const HEIGHT_REM = 14;
/** In heights of its letters. */
const WIDEST_FIGURE = 2.5;
const AXIS_NAME = 'test rounds, at most';

export function RoundsChart({ figures, rounds, chosen, methodIndex }: RoundsChartProps) {
  const [first, last] = [rounds[0] ?? 0, rounds.at(-1) ?? 0];
  const axis = { min: first - 0.5, max: last + 0.5, ticks: rounds, format: String, name: AXIS_NAME };
  return (
    <div className="rounds-chart">
      {figures.map(({ name, points, scale, format }) => (
        <PlainPlot
          key={name}
          x={axis}
          y={{ ...scale, format, name }}
          heightRem={HEIGHT_REM}
          summary={`${name}. ${points.map(({ rounds: count, text }) => `${roundsName(count)}: ${text}`).join('; ')}`}
        >
          {(place) => (
            <>
              <Chosen rounds={chosen} place={place} />
              {points.map((point) => (
                <Point
                  key={point.rounds}
                  point={point}
                  place={place}
                  methodIndex={methodIndex}
                  isTold={isRoomy(place) || point.rounds === chosen}
                />
              ))}
            </>
          )}
        </PlainPlot>
      ))}
    </div>
  );
}

function roundsName(count: number): string {
  if (count === 0) return 'No test';
  return count === 1 ? 'One round' : `Up to ${count} rounds`;
}

/** Whether the figures of neighbours stand clear of each other. */
function isRoomy({ x, textPx }: PlotPlace): boolean {
  return x(1) - x(0) >= WIDEST_FIGURE * textPx;
}

/** The wash behind the rounds that are set. */
function Chosen({ rounds, place: { x, heightPx } }: { rounds: number; place: PlotPlace }) {
  const [from, to] = [x(rounds - 0.5), x(rounds + 0.5)];
  return <rect className="rounds-chosen" x={from} width={to - from} y={0} height={heightPx} />;
}

interface PointProps {
  point: RoundsPoint;
  place: PlotPlace;
  methodIndex: number;
  /** Whether the figure stands beside its mark. */
  isTold: boolean;
}

function Point({ point: { rounds, value, low, high, text }, place, methodIndex, isTold }: PointProps) {
  const { x, y, heightPx, textPx } = place;
  const at = x(rounds);
  if (value === null) {
    return (
      <text className="axis-text" x={at} y={heightPx / 2} textAnchor="middle">
        {text}
      </text>
    );
  }
  const { colour, path } = markOf(methodIndex);
  const [top, bottom] = [y(high), y(low)];
  const bandPx = 0.9 * textPx;
  // Over the mark, or under it where there is no room over it.
  const isUnder = Math.min(top, y(value)) < 1.6 * textPx;
  const textY = isUnder ? Math.max(bottom, y(value)) + 1.6 * textPx : Math.min(top, y(value)) - 0.8 * textPx;
  return (
    <>
      <rect
        x={at - bandPx / 2}
        width={bandPx}
        y={top}
        height={Math.max(0, bottom - top)}
        fill={colour}
        fillOpacity={0.28}
      />
      <g transform={`translate(${at - textPx / 2} ${y(value) - textPx / 2}) scale(${textPx / 12})`}>
        <path d={path} fill={colour} />
      </g>
      {isTold && (
        <text className="rounds-value" x={at} y={textY} textAnchor="middle">
          {text}
        </text>
      )}
    </>
  );
}
