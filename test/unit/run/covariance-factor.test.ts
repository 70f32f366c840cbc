/** Factors of covariances, whole and with lost rank. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { covarianceFactor } from '../../../sim/run/covariance-factor';

/** Σ column·columnᵀ of the given columns of n. */
function covarianceOf(columns: readonly number[][], n: number): Float64Array {
  const sum = new Float64Array(n * n);
  for (const column of columns) {
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum[i * n + j]! += column[i]! * column[j]!;
  }
  return sum;
}

function times(factor: Float64Array, n: number): Float64Array {
  return covarianceOf(
    Array.from({ length: n }, (_, k) => Array.from({ length: n }, (_, i) => factor[i * n + k]!)),
    n,
  );
}

describe('a covariance factor', () => {
  test('is the one worked out by hand', () => {
    // published: a text-book example of Cholesky factors, [[4, 12, −16], [12, 37, −43], [−16, −43, 98]]
    const factor = covarianceFactor(Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98), 3);
    const expected = [2, 0, 0, 6, 1, 0, -8, 5, 3];
    factor.forEach((value, k) => {
      expect(value).toBeCloseTo(expected[k]!, 10);
    });
  });

  test('gives the covariance back, in any units, with fewer sources than outputs too', () => {
    const number = fc.integer({ min: -1000, max: 1000 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }).chain((n) =>
          fc.record({
            columns: fc.array(fc.array(number, { minLength: n, maxLength: n }), { minLength: 0, maxLength: 12 }),
            units: fc.array(fc.integer({ min: -6, max: 4 }), { minLength: n, maxLength: n }),
          }),
        ),
        ({ columns, units }) => {
          const n = units.length;
          const covariance = covarianceOf(
            columns.map((column) => column.map((value, i) => value * 10 ** units[i]!)),
            n,
          );
          const factor = covarianceFactor(covariance, n);
          const back = times(factor, n);
          for (let i = 0; i < n; i++) {
            for (let j = 0; j < n; j++) {
              const scale = Math.sqrt(covariance[i * n + i]! * covariance[j * n + j]!);
              // what counts as lost rank is a millionth of a standard deviation
              expect(Math.abs(back[i * n + j]! - covariance[i * n + j]!)).toBeLessThanOrEqual(3e-6 * scale);
              if (j > i) expect(factor[i * n + j]).toBe(0);
            }
          }
        },
      ),
      { seed: 31, numRuns: 500 },
    );
  });

  test('of one source has one column, and of none has nothing', () => {
    const factor = covarianceFactor(covarianceOf([[3, -2, 0, 6]], 4), 4);
    expect([...factor].map((value) => Number(value.toFixed(9)))).toEqual([
      3, 0, 0, 0, -2, 0, 0, 0, 0, 0, 0, 0, 6, 0, 0, 0,
    ]);
    expect(Math.max(...covarianceFactor(new Float64Array(16), 4).map(Math.abs))).toBe(0);
  });
});
