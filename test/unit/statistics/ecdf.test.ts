import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countAtMost, histogram } from '../../../sim/statistics/ecdf';
import { sortedCopy } from '../../../sim/statistics/quantiles';

const smallNumber = fc.oneof(fc.integer({ min: -6, max: 6 }), fc.double({ min: -6, max: 6, noNaN: true }));

describe('counting', () => {
  test('finds as many values at most x as looking at each does', () => {
    fc.assert(
      fc.property(fc.array(smallNumber, { maxLength: 50 }), smallNumber, (values, x) => {
        expect(countAtMost(sortedCopy(values), x)).toBe(values.filter((value) => value <= x).length);
      }),
    );
  });

  test('counts ties all at once', () => {
    expect([0, 1, 2, 3.9, 4, 9].map((x) => countAtMost([1, 2, 2, 4], x))).toEqual([0, 1, 3, 3, 4, 4]);
  });
});

describe('histogram', () => {
  test('puts a value on an edge into the bin above, the last edge into the last bin', () => {
    const { edges, counts, under, over } = histogram([-1, 0, 0.5, 1, 1.5, 2, 3, 3.1], 0, 3, 3);
    expect([...edges]).toEqual([0, 1, 2, 3]);
    expect({ counts: [...counts], under, over }).toEqual({ counts: [2, 2, 2], under: 1, over: 1 });
  });

  test('counts every value once, in the bin whose edges hold it', () => {
    const ends = fc.tuple(smallNumber, smallNumber).filter(([a, b]) => Math.abs(a - b) > 1e-9);
    fc.assert(
      fc.property(
        fc.array(smallNumber, { maxLength: 50 }),
        ends,
        fc.integer({ min: 1, max: 12 }),
        (values, ab, bins) => {
          const { edges, counts, under, over } = histogram(values, Math.min(...ab), Math.max(...ab), bins);
          expect(counts.reduce((sum, count) => sum + count, under + over)).toBe(values.length);
          counts.forEach((count, bin) => {
            const last = bin === bins - 1;
            const inside = (x: number): boolean =>
              x >= edges[bin]! && (x < edges[bin + 1]! || (last && x === edges[bins]));
            expect(count).toBe(values.filter(inside).length);
          });
        },
      ),
    );
  });

  test('refuses a range without width and bins that cannot be', () => {
    expect(() => histogram([1], 2, 2, 3)).toThrow('Histogram from 2 to 2 has no width.');
    expect(() => histogram([1], 0, 2, 0)).toThrow('Histogram with 0 bins cannot be.');
  });
});
