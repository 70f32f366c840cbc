/** Solving the six closure equations of a Newton step, without allocating. */

const factor = new Float64Array(21);

/**
 * x = (h + ridge·1)⁻¹ g by Cholesky; h is the lower triangle (21 numbers, row by row) of a symmetric 6×6 matrix.
 * False when h + ridge·1 is not positive definite.
 */
export function ridgeSolve(h: Float64Array, ridge: number, g: Float64Array, x: Float64Array): boolean {
  for (let i = 0, ii = 0; i < 6; ii += ++i) {
    for (let j = 0, jj = 0; j <= i; jj += ++j) {
      let sum = h[ii + j]!;
      for (let k = 0; k < j; k++) sum -= factor[ii + k]! * factor[jj + k]!;
      if (i === j) {
        sum += ridge;
        if (!(sum > 0)) return false;
        factor[ii + i] = Math.sqrt(sum);
      } else factor[ii + j] = sum / factor[jj + j]!;
    }
  }
  for (let i = 0, ii = 0; i < 6; ii += ++i) {
    let sum = g[i]!;
    for (let k = 0; k < i; k++) sum -= factor[ii + k]! * x[k]!;
    x[i] = sum / factor[ii + i]!;
  }
  for (let i = 5; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < 6; k++) sum -= factor[(k * (k + 1)) / 2 + i]! * x[k]!;
    x[i] = sum / factor[(i * (i + 1)) / 2 + i]!;
  }
  return true;
}
