/**
 * Lower triangular F with F·Fᵀ = covariance, for covariances that may have lost rank: scaled to correlations first, so
 * that outputs of any unit are judged alike, and a direction with nothing left in it gets a column of zeros.
 *
 * @param covariance symmetric positive semidefinite, n×n, row by row; what stands above its diagonal is not looked at
 */
export function covarianceFactor(covariance: Float64Array, n: number): Float64Array {
  const factor = new Float64Array(n * n);
  const scale = Float64Array.from({ length: n }, (_, i) => Math.sqrt(Math.max(0, covariance[i * n + i]!)));
  const LOST = 1e-12;
  for (let j = 0; j < n; j++) {
    if (scale[j] === 0) continue;
    let rest = 1;
    for (let k = 0; k < j; k++) rest -= factor[j * n + k]! ** 2;
    if (rest <= LOST) continue;
    const pivot = Math.sqrt(rest);
    factor[j * n + j] = pivot;
    for (let i = j + 1; i < n; i++) {
      if (scale[i] === 0) continue;
      let sum = covariance[i * n + j]! / (scale[i]! * scale[j]!);
      for (let k = 0; k < j; k++) sum -= factor[i * n + k]! * factor[j * n + k]!;
      factor[i * n + j] = sum / pivot;
    }
  }
  for (let i = 0; i < n; i++) for (let j = 0; j <= i; j++) factor[i * n + j]! *= scale[i]!;
  return factor;
}
