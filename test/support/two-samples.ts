/** Whether two samples come from one distribution, with stated rates of false alarm. */
import { Moments } from '../../sim/statistics/moments';

/** Largest distance between the cumulative shares of two samples; equal values are passed together. */
export function twoSampleDistance(first: Float64Array, second: Float64Array): number {
  const a = first.slice().sort();
  const b = second.slice().sort();
  let [i, j, largest] = [0, 0, 0];
  while (i < a.length && j < b.length) {
    const value = Math.min(a[i]!, b[j]!);
    while (i < a.length && a[i]! <= value) i++;
    while (j < b.length && b[j]! <= value) j++;
    largest = Math.max(largest, Math.abs(i / a.length - j / b.length));
  }
  return largest;
}

/**
 * The distance that two samples of one distribution exceed with at most this chance.
 *
 * Source: N. V. Smirnov (1939): exp(−2·D²·nm/(n + m)) each way, for large samples; smaller still with equal values.
 */
export const distanceLimit = (n: number, m: number, falseAlarm: number): number =>
  Math.sqrt((-0.5 * Math.log(falseAlarm / 2) * (n + m)) / (n * m));

/**
 * Difference of the two samples' standard deviations, in standard errors, with the sampling variance from the samples'
 * own fourth moments; 0 when neither varies.
 *
 * Source: standard error of a standard deviation, σ·√((κ − 1)/(4n)); M. G. Kendall and A. Stuart, The Advanced Theory of
 * Statistics, vol. 1 (1963), 10.8.
 */
export function spreadDifference(first: Float64Array, second: Float64Array): number {
  const variance = (sample: Float64Array): { sd: number; error: number } => {
    const { mean, sd } = new Moments().add(sample);
    let fourth = 0;
    for (const value of sample) fourth += (value - mean) ** 4 / sample.length;
    return { sd, error: sd > 0 ? sd * Math.sqrt((fourth / sd ** 4 - 1) / (4 * sample.length)) : 0 };
  };
  const [a, b] = [variance(first), variance(second)];
  const error = Math.hypot(a.error, b.error);
  return error > 0 ? (a.sd - b.sd) / error : 0;
}
