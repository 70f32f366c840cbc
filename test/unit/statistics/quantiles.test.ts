import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillNormals } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import { quantileDots } from '../../../sim/statistics/dots';
import { normalQuantile } from '../../../sim/statistics/normal-distribution';
import {
  quantile,
  quantileInterval,
  quantileOfLargest,
  selectQuantile,
  selectQuantileIntervals,
  selectQuantiles,
  sortedCopy,
} from '../../../sim/statistics/quantiles';

const sample = fc
  .array(fc.oneof(fc.integer({ min: -5, max: 5 }), fc.double({ min: -1e6, max: 1e6, noNaN: true })), {
    minLength: 1,
    maxLength: 60,
  })
  .map((values) => Float64Array.from(values));
const probability = fc.double({ min: 0, max: 1, noNaN: true });

describe('quantile of a sorted sample', () => {
  // derived: places n·p + ½ counted from 1, definition 5 of Hyndman and Fan (1996)
  test.each([
    [0, 1],
    [0.05, 1],
    [0.1, 1.5],
    [0.5, 5.5],
    [0.77, 8.2],
    [0.95, 10],
    [1, 10],
  ])('%d of 1 to 10 is %d', (p, value) => {
    expect(quantile([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], p)).toBeCloseTo(value, 12);
  });

  test('never falls as the probability rises, and stays within the sample', () => {
    fc.assert(
      fc.property(sample, probability, probability, (values, a, b) => {
        const sorted = sortedCopy(values);
        const low = quantile(sorted, Math.min(a, b));
        const high = quantile(sorted, Math.max(a, b));
        expect(low).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(sorted[0]!);
        expect(high).toBeLessThanOrEqual(sorted.at(-1)!);
      }),
    );
  });

  test('stays a number beside infinite values', () => {
    expect(quantile([1, 2, Infinity], 0.5)).toBe(2);
    expect(quantile([1, Infinity, Infinity], 0.9)).toBe(Infinity);
    expect(quantile([-Infinity, 5], 0.2)).toBe(-Infinity);
    expect(quantile([-Infinity, 5], 0.5)).toBe(-Infinity);
  });

  test('of nothing is not a number; a probability outside 0 to 1 is refused', () => {
    expect(quantile([], 0.5)).toBeNaN();
    expect(() => quantile([1], 1.01)).toThrow('Probability 1.01 is not between 0 and 1.');
    expect(() => quantile([1], Number.NaN)).toThrow(RangeError);
  });
});

describe('quantile without sorting', () => {
  test('is the same number, and leaves the values as they were', () => {
    fc.assert(
      fc.property(sample, probability, (values, p) => {
        const before = values.slice();
        // −0 and 0 are the same number; sorting alone tells them apart.
        expect(selectQuantile(values, p) === quantile(sortedCopy(values), p)).toBe(true);
        expect(values).toEqual(before);
      }),
    );
  });

  test('is the same at several probabilities in one go, in any order, and so are the intervals', () => {
    fc.assert(
      fc.property(sample, fc.array(probability, { maxLength: 6 }), (values, probabilities) => {
        const before = values.slice();
        const sorted = sortedCopy(values);
        const selected = selectQuantiles(values, probabilities);
        expect(selected.every((value, i) => value === quantile(sorted, probabilities[i]!))).toBe(true);
        selectQuantileIntervals(values, probabilities).forEach(({ value, low, high }, i) => {
          const expected = quantileInterval(sorted, probabilities[i]!);
          expect([value === expected.value, low === expected.low, high === expected.high]).toEqual([true, true, true]);
        });
        expect(values).toEqual(before);
      }),
    );
    expect(() => selectQuantileIntervals(Float64Array.of(1, 2), [-0.1])).toThrow('Probability -0.1 is not between');
    expect(selectQuantileIntervals(new Float64Array(0), [0.5])[0]).toEqual(quantileInterval([], 0.5));
  });

  test('is quick enough on equal, rising and falling values', () => {
    const n = 200_000;
    for (const of of [() => 1, (i: number) => i, (i: number) => -i, (i: number) => i % 7]) {
      const values = Float64Array.from({ length: n }, (_, i) => of(i));
      expect(selectQuantile(values, 0.95)).toBe(quantile(sortedCopy(values), 0.95));
    }
    expect(selectQuantile(new Float64Array(0), 0.5)).toBeNaN();
  });
});

describe('quantile of the largest alone', () => {
  test('is the same number, however many of the smaller ones are left out', () => {
    fc.assert(
      fc.property(sample, probability, fc.double({ min: 0, max: 1, noNaN: true }), (values, p, more) => {
        const sorted = sortedCopy(values);
        const most = Math.max(0, Math.floor(Math.min(Math.max(sorted.length * p - 0.5, 0), sorted.length - 1)));
        const largest = sorted.slice(Math.floor(most * more)).reverse();
        expect(quantileOfLargest(largest, sorted.length, p) === quantile(sorted, p)).toBe(true);
      }),
    );
  });

  test('is refused where it lies below them', () => {
    expect(() => quantileOfLargest(Float64Array.of(3, 4), 4, 0.5)).toThrow('do not hold the 0.5-quantile');
    expect(quantileOfLargest(Float64Array.of(4, 3, 2), 4, 0.5)).toBe(2.5);
  });
});

describe('interval of a quantile', () => {
  // published: ranks of the 95 % interval of the median in tables of the sign test (W. J. Conover, "Practical
  // Nonparametric Statistics"); from memory, and recomputed from the binomial sums
  test.each([
    [10, 2, 9],
    [20, 6, 15],
    [100, 40, 61],
  ])('the median of %d values lies between the values of rank %d and %d', (count, low, high) => {
    const ranks = Float64Array.from({ length: count }, (_, i) => i + 1);
    expect(quantileInterval(ranks, 0.5)).toEqual({ value: (count + 1) / 2, low, high });
  });

  test('holds the true quantile at least as often as it says, and not much oftener', () => {
    const samples = 3000;
    const values = new Float64Array(400);
    const generator = stream(11, 'coverage', 0);
    let held = 0;
    for (let i = 0; i < samples; i++) {
      fillNormals(generator, values);
      const { low, high } = quantileInterval(sortedCopy(values), 0.9);
      if (low <= normalQuantile(0.9) && normalQuantile(0.9) <= high) held++;
    }
    // Three standard errors below 95 %; whole ranks may add a little above it.
    const error = Math.sqrt((0.95 * 0.05) / samples);
    expect(held / samples).toBeGreaterThan(0.95 - 3 * error);
    expect(held / samples).toBeLessThan(0.965 + 3 * error);
  });

  test('ends at the extremes where the sample is too small', () => {
    expect(quantileInterval([1, 2, 3], 0.95)).toEqual({ value: 3, low: 2, high: 3 });
    expect(quantileInterval([4], 0.5)).toEqual({ value: 4, low: 4, high: 4 });
    expect(quantileInterval([1, 2], 0)).toEqual({ value: 1, low: 1, high: 1 });
    expect(quantileInterval([], 0.5)).toEqual({ value: Number.NaN, low: Number.NaN, high: Number.NaN });
  });

  test('holds the quantile itself and widens with the level', () => {
    fc.assert(
      fc.property(sample, probability, (values, p) => {
        const sorted = sortedCopy(values);
        const narrow = quantileInterval(sorted, p, 0.8);
        const wide = quantileInterval(sorted, p, 0.99);
        expect(wide.low).toBeLessThanOrEqual(narrow.low);
        expect(narrow.low).toBeLessThanOrEqual(narrow.value);
        expect(narrow.value).toBeLessThanOrEqual(narrow.high);
        expect(narrow.high).toBeLessThanOrEqual(wide.high);
      }),
    );
  });
});

describe('dots', () => {
  test('are the sample itself when there are as many', () => {
    expect([...quantileDots(Float64Array.of(1, 3, 4, 10), 4)]).toEqual([1, 3, 4, 10]);
  });

  test('are fifty middles of equal chances of an even spread', () => {
    const even = Float64Array.from({ length: 10_000 }, (_, i) => (i + 0.5) / 10_000);
    const dots = quantileDots(even);
    expect(dots.length).toBe(50);
    dots.forEach((dot, i) => {
      expect(dot).toBeCloseTo((i + 0.5) / 50, 12);
    });
  });
});
