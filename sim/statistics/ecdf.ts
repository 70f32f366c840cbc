/** How many of the ascending values are at most x, by halving. */
export function countAtMost(sorted: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! <= x) low = middle + 1;
    else high = middle;
  }
  return low;
}

export interface Histogram {
  /** Edges of the bins, one more than there are bins, ascending. */
  edges: Float64Array;
  /** Values in each bin; a bin holds its lower edge, and the last one its upper edge too. */
  counts: Uint32Array;
  /** Values below the first and above the last edge. */
  under: number;
  over: number;
}

/**
 * Counts the values, in any order, into `bins` equal bins from `from` to `to`.
 *
 * @throws RangeError unless from < to and bins is a whole number of at least 1
 */
export function histogram(values: ArrayLike<number>, from: number, to: number, bins: number): Histogram {
  if (!(from < to)) throw new RangeError(`Histogram from ${from} to ${to} has no width. Give an end above the start.`);
  if (!Number.isInteger(bins) || bins < 1) {
    throw new RangeError(`Histogram with ${bins} bins cannot be. Give a whole number of at least 1.`);
  }
  const edges = Float64Array.from({ length: bins + 1 }, (_, i) => from + ((to - from) * i) / bins);
  edges[bins] = to;
  const counts = new Uint32Array(bins);
  let under = 0;
  let over = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value < from) under++;
    else if (value > to) over++;
    else {
      let bin = Math.min(Math.floor(((value - from) / (to - from)) * bins), bins - 1);
      // Rounding may put a value that lies on an edge one bin too low or too high.
      if (value < edges[bin]!) bin--;
      else if (bin + 1 < bins && value >= edges[bin + 1]!) bin++;
      counts[bin]!++;
    }
  }
  return { edges, counts, under, over };
}
