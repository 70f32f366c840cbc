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
 * The same numbers as `quantile` of the sorted values at each probability, without sorting: time grows only in step
 * with the count of values. The values stay as they are and must hold no NaN.
 */
export function selectQuantiles(values: Float64Array, probabilities: readonly number[]): number[] {
  const ordered = orderedAt(
    values,
    probabilities.flatMap((p) => placesOf(values.length, p)),
  );
  return probabilities.map((p) => quantile(ordered, p));
}

/** The same as `quantileInterval` of the sorted values at each probability, without sorting. */
export function selectQuantileIntervals(
  values: Float64Array,
  probabilities: readonly number[],
  level = 0.95,
): QuantileEstimate[] {
  const count = values.length;
  const ends = probabilities.map((p) => intervalPlaces(count, p, level));
  const wanted = probabilities.flatMap((p, i) => [...placesOf(count, p), ends[i]!.low, ends[i]!.high]);
  const ordered = orderedAt(values, wanted);
  return probabilities.map((p, i) => estimateAt(ordered, p, ends[i]!));
}

/** `selectQuantiles` at one probability. */
export function selectQuantile(values: Float64Array, p: number): number {
  return selectQuantiles(values, [p])[0]!;
}

/**
 * The same number as `quantile` of `count` sorted values of which the largest alone are given, in any order.
 *
 * @throws RangeError where the quantile lies below those given
 */
export function quantileOfLargest(largest: Float64Array, count: number, p: number): number {
  const { below, weight } = placeOf(count, p);
  const missing = count - largest.length;
  if (below < missing)
    throw new RangeError(`The largest ${largest.length} of ${count} values do not hold the ${p}-quantile.`);
  const [low, high] = [below, Math.min(below + 1, count - 1)].map((place) => place - missing);
  const ordered = orderedAt(largest, [low!, high!]);
  return between(ordered[low!]!, ordered[high!]!, weight);
}

/**
 * A quantile with a confidence interval that holds for every continuous distribution: the ends are two of the sorted
 * values, and each misses the true quantile with a chance of at most (1 − level)/2 by the exact binomial distribution.
 * Where the sample is too small for that (few values beyond the quantile), the end is the sample's extreme value.
 *
 * Source: G. J. Hahn and W. Q. Meeker, "Statistical Intervals" (1991), 5.2.
 */
export function quantileInterval(sorted: ArrayLike<number>, p: number, level = 0.95): QuantileEstimate {
  return estimateAt(sorted, p, intervalPlaces(sorted.length, p, level));
}

interface Ends {
  low: number;
  high: number;
}

function estimateAt(ordered: ArrayLike<number>, p: number, ends: Ends): QuantileEstimate {
  const value = quantile(ordered, p);
  if (ordered.length === 0) return { value, low: Number.NaN, high: Number.NaN };
  return { value, low: ordered[ends.low]!, high: ordered[ends.high]! };
}

/** The same few are asked for every summary of every method. */
const knownPlaces = new Map<string, Ends>();
const PLACES_KEPT = 200;

/** Where the ends of the interval stand in the sorted sample, counted from 0. */
function intervalPlaces(count: number, p: number, level: number): Ends {
  requireProbability(p);
  const key = `${count} ${p} ${level}`;
  const known = knownPlaces.get(key);
  if (known) return known;
  if (knownPlaces.size >= PLACES_KEPT) knownPlaces.clear();
  const places = placesOfEnds(count, p, level);
  knownPlaces.set(key, places);
  return places;
}

function placesOfEnds(count: number, p: number, level: number): Ends {
  const miss = (1 - level) / 2;
  // Rank r is above the quantile exactly if fewer than r values lie below it.
  const firstTooHigh = firstTrue(1, count + 1, (rank) => binomialAtMost(rank - 1, count, p) > miss);
  const firstSafe = firstTrue(firstTooHigh, count + 1, (rank) => 1 - binomialAtMost(rank - 1, count, p) <= miss);
  return { low: Math.max(firstTooHigh - 1, 1) - 1, high: Math.min(firstSafe, count) - 1 };
}

/** The places of the sorted sample, counted from 0, between which the quantile lies. */
function placesOf(count: number, p: number): [number, number] {
  const { below } = placeOf(count, p);
  return [below, Math.min(below + 1, count - 1)];
}

function placeOf(count: number, p: number): { below: number; weight: number } {
  requireProbability(p);
  const place = Math.min(Math.max(count * p - 0.5, 0), count - 1);
  const below = Math.floor(place);
  return { below, weight: place - below };
}

function requireProbability(p: number): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`Probability ${p} is not between 0 and 1. Give one in that range.`);
}

/** Never 0 times Infinity or one infinity less another, which are no numbers, and never beyond `high` by rounding. */
function between(low: number, high: number, weight: number): number {
  return weight === 0 || low === high || low === Number.NEGATIVE_INFINITY
    ? low
    : Math.min(low + weight * (high - low), high);
}

/**
 * A copy in which each of the wanted places, counted from 0 and given in any order, holds what it would hold if all
 * values were sorted.
 *
 * Source: C. A. R. Hoare, "Algorithm 65: Find", Commun. ACM 4 (1961) 321–322, for several places in one go.
 */
function orderedAt(values: Float64Array, places: readonly number[]): Float64Array {
  const ordered = values.slice();
  order(ordered, 0, values.length - 1, Float64Array.from(places).sort());
  return ordered;
}

/** Orders the values from `left` to `right` about each of the ascending places that lie there. */
function order(values: Float64Array, from: number, to: number, wanted: Float64Array): void {
  let [left, right, places] = [from, to, wanted];
  while (left < right && places.length > 0) {
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
    const lower = places.filter((place) => place <= j);
    const upper = places.filter((place) => place >= i);
    if (upper.length === 0) [right, places] = [j, lower];
    else {
      // Deeper only where places lie on both sides, so no deeper than there are places.
      if (lower.length > 0) order(values, left, j, lower);
      [left, places] = [i, upper];
    }
  }
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
