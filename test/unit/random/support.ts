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

export function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (x: Float64Array): number => x.reduce((sum, value) => sum + value, 0) / x.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const [da, db] = [a[i]! - meanA, b[i]! - meanB];
    ab += da * db;
    aa += da * da;
    bb += db * db;
  }
  return ab / Math.sqrt(aa * bb);
}
