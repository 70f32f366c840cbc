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
