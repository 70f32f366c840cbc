import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Moments } from '../../../sim/statistics/moments';

const numbers = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 40 });

describe('moments', () => {
  test('of 2, 4, 4, 4, 5, 5, 7, 9', () => {
    const moments = new Moments().add([2, 4, 4, 4, 5, 5, 7, 9]);
    // derived: Σ = 40, Σ(x − 5)² = 32
    expect({ count: moments.count, mean: moments.mean, squares: moments.squares }).toEqual({
      count: 8,
      mean: 5,
      squares: 32,
    });
    expect(moments.variance).toBeCloseTo(32 / 7, 14);
    expect(moments.sd).toBeCloseTo(Math.sqrt(32 / 7), 14);
    expect(moments.standardError).toBeCloseTo(Math.sqrt(32 / 7 / 8), 14);
  });

  test('merged from pieces equal those of the whole', () => {
    fc.assert(
      fc.property(numbers, fc.nat(40), fc.nat(40), (values, a, b) => {
        const [first, second] = [Math.min(a, b, values.length), Math.min(Math.max(a, b), values.length)];
        const merged = new Moments().add(values, 0, first);
        merged.merge(new Moments().add(values, first, second)).merge(new Moments().add(values, second));
        const whole = new Moments().add(values);
        const size = Math.max(...values.map(Math.abs), 1e-100);
        expect(merged.count).toBe(whole.count);
        expect(Math.abs(merged.mean - whole.mean)).toBeLessThanOrEqual(1e-14 * size);
        expect(Math.abs(merged.squares - whole.squares)).toBeLessThanOrEqual(1e-12 * size * size);
      }),
    );
  });

  test('shift with the values and stretch with them', () => {
    fc.assert(
      fc.property(numbers, fc.integer({ min: -1000, max: 1000 }), (values, shift) => {
        const plain = new Moments().add(values);
        const moved = new Moments().add(values.map((x) => 3 * x + shift));
        const size = 3 * Math.max(...values.map(Math.abs)) + 1000;
        expect(Math.abs(moved.mean - (3 * plain.mean + shift))).toBeLessThanOrEqual(1e-14 * size);
        expect(Math.abs(moved.sd - 3 * plain.sd)).toBeLessThanOrEqual(1e-12 * size);
      }),
    );
  });

  test('travel as three numbers', () => {
    const here = new Moments().add([1, 2, 4]);
    const there = new Moments({ ...structuredClone(here) });
    expect(there).toEqual(here);
    expect(new Moments().add([8]).merge(structuredClone(here)).count).toBe(4);
  });

  test('of nothing have no spread, and of one number neither', () => {
    expect(new Moments().sd).toBeNaN();
    expect(new Moments().add([5]).sd).toBeNaN();
    expect(new Moments().add([5]).mean).toBe(5);
    expect(new Moments().add([5, 6], 1, 1).merge(new Moments()).count).toBe(0);
  });
});
