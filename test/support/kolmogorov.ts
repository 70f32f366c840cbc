/** Whether a sample comes from a distribution known exactly, apart from an exact share of zeros. */
import { kolmogorovDistance } from '../unit/random/support';

/**
 * Largest distance of the values above 0 from their continuous distribution, in units of its 1-in-10,000 limit (so above
 * 1 it is a false alarm once in 10,000 seeds; Kolmogorov 1933: 2.225 / √n).
 */
export function positivePartDistance(sample: Float64Array, cdf: (x: number) => number): number {
  const positive = sample.filter((x) => x > 0);
  return (kolmogorovDistance(positive, cdf) * Math.sqrt(positive.length)) / 2.225;
}

/** How far a count is from its expectation, in standard errors of a binomial. */
export function countDeviation(count: number, trials: number, chance: number): number {
  return (count - trials * chance) / Math.sqrt(trials * chance * (1 - chance));
}
