/** Where the dots of a dot plot stand: in columns one dot wide, stacked from the base line. */
export interface Dot {
  /** Centre of its column. */
  x: number;
  /** Its place in the column, 0 at the base line. */
  level: number;
  valueMm: number;
}

const SMALLEST_PX = 4;
/** Between the scale and the dots beside it, in dots. */
export const BESIDE_GAP = 0.5;

/**
 * @param values ascending, all at or below `maxMm`
 * @param widthPx of the whole scale; x comes out in px from its start
 */
export function stackDots(values: readonly number[], maxMm: number, widthPx: number, dotPx: number): Dot[] {
  const columns = Math.max(1, Math.floor(widthPx / dotPx));
  const columnPx = widthPx / columns;
  const heights = new Map<number, number>();
  return values.map((valueMm) => {
    const column = Math.min(columns - 1, Math.floor((valueMm / maxMm) * columns));
    const level = heights.get(column) ?? 0;
    heights.set(column, level + 1);
    return { x: (column + 0.5) * columnPx, level, valueMm };
  });
}

/** Dots that have no place on the scale, packed in columns of at most `levels`; x counts the columns from 0. */
export function packDots(values: readonly number[], levels: number): Dot[] {
  return values.map((valueMm, place) => ({ x: Math.floor(place / levels), level: place % levels, valueMm }));
}

/** How far apart the dots of a column stand: a dot, or less where the tallest column would leave the plot. */
export function levelPx(dots: readonly Dot[], dotPx: number, heightPx: number): number {
  const highest = Math.max(0, ...dots.map(({ level }) => level));
  return highest === 0 ? dotPx : Math.min(dotPx, (heightPx - 1 - dotPx) / highest);
}

export interface DotRoom {
  /** The scale's length. */
  widthPx: number;
  heightPx: number;
  /** Room for the dots before and beyond the scale. */
  besidePx: number;
  /** The largest dot that looks well. */
  mostPx: number;
}

/**
 * The largest dot with which all plots fit.
 *
 * @param plots the values on the scale, one list a plot
 * @param packed how many dots stand together beside the scale, in the plot where they are most
 */
export function dotSize(plots: readonly (readonly number[])[], packed: number, maxMm: number, room: DotRoom): number {
  const { widthPx, heightPx, besidePx, mostPx } = room;
  for (let dotPx = mostPx; dotPx > SMALLEST_PX; dotPx--) {
    const levels = Math.floor(heightPx / dotPx);
    if ((Math.ceil(packed / levels) + BESIDE_GAP) * dotPx > besidePx) continue;
    const highest = Math.max(
      0,
      ...plots.flatMap((values) => stackDots(values, maxMm, widthPx, dotPx).map((d) => d.level + 1)),
    );
    if (highest * dotPx <= heightPx) return dotPx;
  }
  return SMALLEST_PX;
}
