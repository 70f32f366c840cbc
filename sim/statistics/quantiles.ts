import { binomialAtMost } from './incomplete-beta';

/** A quantile of the population behind a sample, with its confidence interval. */
export interface QuantileEstimate {
  value: number;
  low: number;
  high: number;
}

/** The values in ascending order, in a new array. */
export function sortedCopy(values: ArrayLike<number>): Float64Array {
  return Float64Array.from(values).sort();
}

/**
 * The quantile of probability p of an ascending sample: the r-th smallest of n stands at probability (r − ½)/n, and
 * between them the line is straight; beyond the first and last it is flat. NaN for an empty sample.
 *
 * @throws RangeError if p is not between 0 and 1
 *
 * Source: JCGM 101:2008, 7.5.1 and annex D (the same as definition 5 of R. J. Hyndman and Y. Fan, Amer. Statist. 50
 * (1996) 361–365).
 */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const { below, weight } = placeOf(sorted.length, p);
  if (sorted.length === 0) return Number.NaN;
  return between(sorted[below]!, sorted[Math.min(below + 1, sorted.length - 1)]!, weight);
}

/**
 * The same numbers as `quantile` of the sorted values at ascending probabilities, without sorting: time grows only in
 * step with the count of values. The values stay as they are and must hold no NaN.
 *
 * Source: C. A. R. Hoare, "Algorithm 65: Find", Commun. ACM 4 (1961) 321–322.
 */
export function selectQuantiles(values: Float64Array, probabilities: readonly number[]): number[] {
  const count = values.length;
  const scratch = values.slice();
  // What was put in order for one probability leaves only the values above it to look through for the next.
  let from = 0;
  return probabilities.map((p) => {
    const { below, weight } = placeOf(count, p);
    if (count === 0) return Number.NaN;
    if (below < from) throw new RangeError('The probabilities do not ascend. Give them in ascending order.');
    const low = selectInPlace(scratch, from, count, below);
    from = below;
    if (weight === 0) return low;
    let next = Infinity;
    for (let i = below + 1; i < count; i++) if (scratch[i]! < next) next = scratch[i]!;
    return between(low, next, weight);
  });
}

/** `selectQuantiles` at one probability. */
export function selectQuantile(values: Float64Array, p: number): number {
  return selectQuantiles(values, [p])[0]!;
}

/**
 * A quantile with a confidence interval that holds for every continuous distribution: the ends are two of the sorted
 * values, and each misses the true quantile with a chance of at most (1 − level)/2 by the exact binomial distribution.
 * Where the sample is too small for that (few values beyond the quantile), the end is the sample's extreme value.
 *
 * Source: G. J. Hahn and W. Q. Meeker, "Statistical Intervals" (1991), 5.2.
 */
export function quantileInterval(sorted: ArrayLike<number>, p: number, level = 0.95): QuantileEstimate {
  const count = sorted.length;
  const value = quantile(sorted, p);
  if (count === 0) return { value, low: Number.NaN, high: Number.NaN };
  const miss = (1 - level) / 2;
  // Rank r is above the quantile exactly if fewer than r values lie below it.
  const firstTooHigh = firstTrue(1, count + 1, (rank) => binomialAtMost(rank - 1, count, p) > miss);
  const firstSafe = firstTrue(1, count + 1, (rank) => 1 - binomialAtMost(rank - 1, count, p) <= miss);
  return {
    value,
    low: sorted[Math.max(firstTooHigh - 1, 1) - 1]!,
    high: sorted[Math.min(firstSafe, count) - 1]!,
  };
}

function placeOf(count: number, p: number): { below: number; weight: number } {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`Probability ${p} is not between 0 and 1. Give one in that range.`);
  const place = Math.min(Math.max(count * p - 0.5, 0), count - 1);
  const below = Math.floor(place);
  return { below, weight: place - below };
}

/** Never 0 times Infinity, which is no number, and never beyond `high` by rounding. */
function between(low: number, high: number, weight: number): number {
  return weight === 0 || low === high ? low : Math.min(low + weight * (high - low), high);
}

/** Puts the value that belongs at index k there if those from `from` to `count` are ordered about it, and returns it. */
function selectInPlace(values: Float64Array, from: number, count: number, k: number): number {
  let left = from;
  let right = count - 1;
  while (left < right) {
    const pivot = middleOf(values[left]!, values[(left + right) >>> 1]!, values[right]!);
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const swapped = values[i]!;
        values[i++] = values[j]!;
        values[j--] = swapped;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k]!;
}

function middleOf(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

/** The first whole number from `from` to `to` at which a condition that stays true holds; `to` if it never does. */
function firstTrue(from: number, to: number, holds: (n: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
