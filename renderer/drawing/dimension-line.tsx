import type { Point } from './ring-outline';

const TICK_PX = 4;
const CLEAR_OF_POINT_PX = 3;
const PAST_LINE_PX = 5;

interface DimensionLineProps {
  /** Ends of what is measured, in px on the sheet. */
  from: Point;
  to: Point;
  /** How far to the left of the way from `from` to `to` the line lies, px; 0: right on it, without extension lines. */
  offset?: number;
  figure: string;
  /** Said before the figure where there is room for it. */
  name?: string;
  textPx: number;
  /** Where the lettering goes when it does not fit between the ticks. */
  beyond?: 'from' | 'to';
}

/** Width of a line of lettering, px, on the wide side of what most typefaces need. */
export function letteringPx(text: string, textPx: number): number {
  return text.length * textPx * 0.6;
}

/** A measured length with extension lines, ticks and its figure, the lettering upright or read from the right. */
export function DimensionLine(props: DimensionLineProps) {
  const { from, to, offset = 0, figure, name, textPx, beyond = 'to' } = props;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const left = { x: along.y, y: -along.x };
  const shifted = (point: Point, by: number): Point => ({ x: point.x + left.x * by, y: point.y + left.y * by });
  const start = shifted(from, offset);
  const end = shifted(to, offset);

  const named = name === undefined || name === '' ? figure : `${name} ${figure}`;
  const fits = (text: string) => letteringPx(text, textPx) <= length - 3 * TICK_PX;
  const isBeyond = !fits(figure);
  const text = fits(named) ? named : figure;
  const textLength = letteringPx(text, textPx);
  const [near, far, outward] = beyond === 'to' ? [start, end, 1] : [end, start, -1];
  const reach = isBeyond ? textLength + 3 * TICK_PX : 0;
  const tail = { x: far.x + along.x * outward * reach, y: far.y + along.y * outward * reach };
  const middle = isBeyond
    ? { x: (far.x + tail.x) / 2 + along.x * outward * TICK_PX, y: (far.y + tail.y) / 2 + along.y * outward * TICK_PX }
    : { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };

  return (
    <g className="dimension">
      {offset !== 0 &&
        [from, to].map((point) => {
          const sign = Math.sign(offset);
          const a = shifted(point, sign * CLEAR_OF_POINT_PX);
          const b = shifted(point, offset + sign * PAST_LINE_PX);
          return (
            <line key={`${point.x} ${point.y}`} className="dimension-extension" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />
          );
        })}
      <line className="dimension-line" x1={near.x} y1={near.y} x2={tail.x} y2={tail.y} />
      {[start, end].map((point) => (
        <line
          key={`${point.x} ${point.y}`}
          className="dimension-tick"
          x1={point.x - (along.x - left.x) * TICK_PX}
          y1={point.y - (along.y - left.y) * TICK_PX}
          x2={point.x + (along.x - left.x) * TICK_PX}
          y2={point.y + (along.y - left.y) * TICK_PX}
        />
      ))}
      <Lettering at={middle} along={along} textPx={textPx} text={text} />
    </g>
  );
}

/** A figure written along a direction, just above its line, never upside down. */
function Lettering({ at, along, textPx, text }: { at: Point; along: Point; textPx: number; text: string }) {
  let angle = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (angle >= 90 - 1e-6) angle -= 180;
  if (angle < -90 - 1e-6) angle += 180;
  return (
    <text
      className="drawing-text"
      fontSize={textPx}
      textAnchor="middle"
      transform={`translate(${at.x} ${at.y}) rotate(${angle}) translate(0 ${-0.35 * textPx})`}
    >
      {text}
    </text>
  );
}
