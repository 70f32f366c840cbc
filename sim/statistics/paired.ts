/** Differences between two runs on the same random numbers, trial by trial, with their 95 % intervals. */
import { Moments } from './moments';
import { normalQuantile } from './normal-distribution';
import { selectQuantile } from './quantiles';
import { studentQuantile } from './student';

/** First less second. */
export interface Difference {
  value: number;
  low: number;
  high: number;
}

function around(value: number, reach: number): Difference {
  return { value, low: value - reach, high: value + reach };
}

/** Mean of paired differences over `count` trials. */
export function pairedMean(count: number, difference: (k: number) => number): Difference {
  const moments = new Moments().add(Float64Array.from({ length: count }, (_, k) => difference(k)));
  return around(moments.mean, count > 1 ? normalQuantile(0.975) * moments.standardError : 0);
}

const MOST_BATCHES = 20;
const LEAST_BATCHES = 5;
/** Below this a batch says little about an outer percentile. */
const TRIALS_A_BATCH = 200;

/**
 * Difference of the p-quantiles of the first `count` trials. How much it changes from one batch of trials to the next
 * gives the interval (batch means with Student's t); with fewer than two trials a batch there is none.
 */
export function pairedQuantile(a: Float64Array, b: Float64Array, count: number, p: number): Difference {
  const difference = (from: number, to: number) =>
    selectQuantile(a.subarray(from, to), p) - selectQuantile(b.subarray(from, to), p);
  const value = difference(0, count);
  const batches = Math.min(MOST_BATCHES, Math.max(LEAST_BATCHES, Math.floor(count / TRIALS_A_BATCH)));
  const size = Math.floor(count / batches);
  if (size < 2) return { value, low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  const perBatch = Float64Array.from({ length: batches }, (_, k) => difference(k * size, (k + 1) * size));
  return around(value, studentQuantile(0.975, batches - 1) * new Moments().add(perBatch).standardError);
}
