/** Whether a sample comes from a distribution known exactly, wholly or apart from an exact share of zeros. */

/** Largest distance between the sample's distribution and a continuous one. The sample is sorted in place. */
export function kolmogorovDistance(sample: Float64Array, cdf: (x: number) => number): number {
  sample.sort();
  let largest = 0;
  for (let i = 0; i < sample.length; i++) {
    const chance = cdf(sample[i]!);
    largest = Math.max(largest, chance - i / sample.length, (i + 1) / sample.length - chance);
  }
  return largest;
}

/** 1 % limit of that distance for a large sample: one false alarm in a hundred seeds (Kolmogorov 1933). */
export const kolmogorovLimit = (count: number): number => 1.62762 / Math.sqrt(count);

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
