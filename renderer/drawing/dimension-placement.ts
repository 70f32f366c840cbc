/** Where a measured length, its ticks and its lettering go on the sheet. Px, y down. */
import { letteringPx } from './lettering';
import type { Point } from './ring-outline';

export interface Dimension {
  /** Ends of what is measured. */
  from: Point;
  to: Point;
  /** How far to the left of the way from `from` to `to` the line lies; 0: right on it, without extension lines. */
  offset: number;
  figure: string;
  /** Said before the figure where there is room for it. */
  name?: string;
}

export interface PlacedDimension {
  extensions: [Point, Point][];
  line: [Point, Point];
  ticks: [Point, Point][];
  words: string;
  /** Middle of the lettering, on the line; it is written just above, turned by the angle and never upside down. */
  at: Point;
  angleDeg: number;
  /** What the lettering reaches, along both axes. */
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const TICK_PX = 4;
const CLEAR_OF_POINT_PX = 3;
const PAST_LINE_PX = 5;
/** Of the lettering above its line, in heights of the lettering: where its feet stand and where its heads end. */
export const FOOT = 0.35;
const HEAD = 1.2;

/**
 * Places one dimension. The name is left out where it does not fit between the ticks; a figure that does not fit there
 * either is written past one of the ends, on the side where the sheet has room for it.
 */
export function placeDimension(dimension: Dimension, sheet: { widthPx: number; textPx: number }): PlacedDimension {
  const { from, to, offset, figure, name } = dimension;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const left = { x: along.y, y: -along.x };
  const moved = (point: Point, sideways: number, onward = 0): Point => ({
    x: point.x + left.x * sideways + along.x * onward,
    y: point.y + left.y * sideways + along.y * onward,
  });
  const [start, end] = [moved(from, offset), moved(to, offset)];
  const sign = Math.sign(offset);
  const extensions = [from, to].map((point): [Point, Point] => [
    moved(point, sign * CLEAR_OF_POINT_PX),
    moved(point, offset + sign * PAST_LINE_PX),
  ]);
  const ticks = [start, end].map((point): [Point, Point] => [
    moved(point, TICK_PX, -TICK_PX),
    moved(point, -TICK_PX, TICK_PX),
  ]);
  const angleDeg = uprightAngle(along);
  const shared = { extensions: offset === 0 ? [] : extensions, ticks, angleDeg };
  const reachOf = (at: Point, words: string) => letteringReach(at, angleDeg, words, sheet.textPx);

  const fitting = [`${name ?? ''} ${figure}`.trim(), figure].find(
    (words) => letteringPx(words, sheet.textPx) <= length - 3 * TICK_PX,
  );
  if (fitting !== undefined) {
    const at = moved(start, 0, length / 2);
    return { ...shared, line: [start, end], words: fitting, at, ...reachOf(at, fitting) };
  }
  const tail = letteringPx(figure, sheet.textPx) + 3 * TICK_PX;
  const past = ([near, far, way]: [Point, Point, 1 | -1]): PlacedDimension => {
    const at = moved(far, 0, way * (tail / 2 + TICK_PX));
    return { ...shared, line: [near, moved(far, 0, way * tail)], words: figure, at, ...reachOf(at, figure) };
  };
  const [afterEnd, beforeStart] = [past([start, end, 1]), past([end, start, -1])];
  const overhang = (placed: PlacedDimension) => Math.max(0, -placed.left) + Math.max(0, placed.right - sheet.widthPx);
  return overhang(beforeStart) < overhang(afterEnd) ? beforeStart : afterEnd;
}

function uprightAngle(along: Point): number {
  const angleDeg = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (angleDeg >= 90 - 1e-6) return angleDeg - 180;
  return angleDeg < -90 - 1e-6 ? angleDeg + 180 : angleDeg;
}

function letteringReach(at: Point, angleDeg: number, words: string, textPx: number) {
  const half = letteringPx(words, textPx) / 2;
  const [cos, sin] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
  const corners = [-half, half].flatMap((across) =>
    [0, -HEAD * textPx].map((up) => ({ x: at.x + across * cos - up * sin, y: at.y + across * sin + up * cos })),
  );
  const [xs, ys] = [corners.map((corner) => corner.x), corners.map((corner) => corner.y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Top and bottom of a sheet that has the given ones without its dimensions. */
export function heightWith(dimensions: readonly PlacedDimension[], topPx: number, bottomPx: number) {
  const ends = dimensions.flatMap(({ line }) => line.map((end) => end.y));
  return {
    topPx: Math.floor(Math.min(topPx, ...ends, ...dimensions.map((placed) => placed.top))),
    bottomPx: Math.ceil(Math.max(bottomPx, ...ends, ...dimensions.map((placed) => placed.bottom))),
  };
}
