/** Differences on the same luck, and whether their intervals hold what they say. */
import { describe, expect, test } from 'vitest';
import { fillNormals } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import { normalQuantile } from '../../../sim/statistics/normal-distribution';
import { pairedMean, pairedQuantile } from '../../../sim/statistics/paired';
import { selectQuantile } from '../../../sim/statistics/quantiles';

function normals(seed: number, name: string, count: number): Float64Array {
  const z = new Float64Array(count);
  fillNormals(stream(seed, name, 0), z);
  return z;
}

/** A sample, and the same one wider and with a little luck of its own. */
function pair(seed: number, count: number): [Float64Array, Float64Array] {
  const [common, own] = [normals(seed, 'common', count), normals(seed, 'own', count)];
  return [common, common.map((z, k) => 1.2 * z + 0.3 * own[k]!)];
}

describe('the paired mean', () => {
  test('has the interval of the differences, not of the two samples', () => {
    // by hand: differences 1, 2, 3: mean 2, standard error 1/√3
    const { value, low, high } = pairedMean(3, (k) => k + 1);
    expect(value).toBe(2);
    expect(high - value).toBeCloseTo(1.959964 / Math.sqrt(3), 6);
    expect(value - low).toBeCloseTo(1.959964 / Math.sqrt(3), 6);
  });

  test('of one pair has no interval to speak of', () => {
    expect(pairedMean(1, () => 4)).toEqual({ value: 4, low: 4, high: 4 });
  });
});

describe('the paired quantile', () => {
  test('is the difference of the two quantiles, of the first trials alone', () => {
    const [a, b] = pair(1, 5000);
    const { value, low, high } = pairedQuantile(b, a, 4000, 0.95);
    const first = (values: Float64Array) => selectQuantile(values.slice(0, 4000), 0.95);
    expect(value).toBe(first(b) - first(a));
    expect(low).toBeLessThan(value);
    expect(high - value).toBeCloseTo(value - low, 12);
  });

  test('is nothing, for certain, between a sample and itself or a shifted copy', () => {
    const [a] = pair(2, 1000);
    expect(pairedQuantile(a, a, 1000, 0.95)).toEqual({ value: 0, low: 0, high: 0 });
    const shifted = a.map((x) => x + 0.5);
    const { value, low, high } = pairedQuantile(shifted, a, 1000, 0.95);
    expect(value).toBeCloseTo(0.5, 12);
    expect(high - low).toBeLessThan(1e-12);
  });

  test('of too few trials has an interval that says nothing', () => {
    const [a, b] = pair(3, 9);
    expect(pairedQuantile(a, b, 9, 0.95)).toMatchObject({ low: -Infinity, high: Infinity });
  });

  // derived: the second sample is normal with sd √(1.2² + 0.3²)
  test.each([400, 4000])('holds the exact difference in about 95 %% of 300 seeds, %s trials each', (count) => {
    const exact = (Math.hypot(1.2, 0.3) - 1) * normalQuantile(0.95);
    let held = 0;
    for (let seed = 0; seed < 300; seed++) {
      const [a, b] = pair(seed, count);
      const { low, high } = pairedQuantile(b, a, count, 0.95);
      if (low <= exact && exact <= high) held++;
    }
    // four standard errors of a share of 300
    expect(Math.abs(held / 300 - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / 300));
  });

  test('is known far better than from two samples of their own', () => {
    const [a, b] = pair(4, 4000);
    const together = pairedQuantile(b, a, 4000, 0.95);
    const apart = pairedQuantile(b, normals(5, 'apart', 4000), 4000, 0.95);
    expect(together.high - together.low).toBeLessThan(0.6 * (apart.high - apart.low));
  });
});
