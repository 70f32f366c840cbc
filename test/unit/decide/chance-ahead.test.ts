/** The chance of being ahead against counting every pair. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aheadChance } from '../../../sim/decide/chance-ahead';
import { fillNormals } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import type { RingSample } from '../../../sim/run/prediction';
import { normalCdf } from '../../../sim/statistics/normal-distribution';
import { sortedCopy } from '../../../sim/statistics/quantiles';

function sample(gaps: ArrayLike<number>): RingSample {
  return { showGapMm: sortedCopy(gaps), otherwiseGoodShowGapMm: new Float64Array(0) };
}

/** Every pair, a tie for half a win. */
function byCounting(a: readonly number[], b: readonly number[]): number {
  let wins = 0;
  for (const x of a) for (const y of b) wins += x < y ? 1 : x === y ? 0.5 : 0;
  return wins / (a.length * b.length);
}

/** Variance of the estimate by leaving out one ring after another: the jackknife of both samples (Arvesen 1969). */
function jackknifeError(a: readonly number[], b: readonly number[]): number {
  const spread = (values: number[]) => {
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    return ((values.length - 1) / values.length) * values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  };
  const without = (values: readonly number[], k: number) => values.filter((_, i) => i !== k);
  return Math.sqrt(
    spread(a.map((_, k) => byCounting(without(a, k), b))) + spread(b.map((_, k) => byCounting(a, without(b, k)))),
  );
}

const gaps = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 2, maxLength: 40 });

describe('the chance that one method is ahead', () => {
  test('is the share of all pairs that it wins, ties counted half', () => {
    fc.assert(
      fc.property(gaps, gaps, (a, b) => {
        expect(aheadChance(sample(a), sample(b)).value).toBeCloseTo(byCounting(a, b), 12);
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  test('has the interval that leaving out one ring after another gives', () => {
    fc.assert(
      fc.property(gaps, gaps, (a, b) => {
        const { value, low, high } = aheadChance(sample(a), sample(b));
        const reach = 1.959964 * jackknifeError(a, b);
        expect(low).toBeCloseTo(Math.max(0, value - reach), 6);
        expect(high).toBeCloseTo(Math.min(1, value + reach), 6);
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  test('and the other’s add up to 1', () => {
    fc.assert(
      fc.property(gaps, gaps, (a, b) => {
        const [one, other] = [aheadChance(sample(a), sample(b)), aheadChance(sample(b), sample(a))];
        expect(one.value + other.value).toBeCloseTo(1, 12);
        expect(one.low).toBeCloseTo(1 - other.high, 12);
      }),
      { seed: 43, numRuns: 200 },
    );
  });

  test('is certain when every gap of the one is smaller, and even for equal gaps', () => {
    expect(aheadChance(sample([1, 2, 3]), sample([4, 5]))).toEqual({ value: 1, low: 1, high: 1 });
    expect(aheadChance(sample([4, 5]), sample([1, 2, 3]))).toEqual({ value: 0, low: 0, high: 0 });
    expect(aheadChance(sample([2, 2, 2]), sample([2, 2]))).toEqual({ value: 0.5, low: 0.5, high: 0.5 });
  });

  // derived: P(X < Y) for normals of means 0 and δ and standard deviation 1 is Φ(δ/√2)
  test('covers the exact chance of two normals in 95 % of repetitions', () => {
    const exact = normalCdf(0.5 / Math.SQRT2);
    const generator = stream(44, 'ahead', 0);
    const draws = new Float64Array(300);
    const repetitions = 1000;
    let covered = 0;
    for (let k = 0; k < repetitions; k++) {
      fillNormals(generator, draws);
      const later = draws.slice(150).map((v) => v + 0.5);
      const { low, high } = aheadChance(sample(draws.slice(0, 150)), sample(later));
      if (low <= exact && exact <= high) covered++;
    }
    // four standard errors of a share: 1 in 16,000 seeds
    expect(Math.abs(covered / repetitions - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / repetitions));
  });
});
