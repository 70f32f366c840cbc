import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evenScale } from '../../../renderer/charts/even-scale';

const figure = fc.double({ min: -1000, max: 1000, noNaN: true });

test('a scale covers what is asked with a few even, round steps', () => {
  fc.assert(
    fc.property(
      figure,
      fc.double({ min: 0.001, max: 1000, noNaN: true }),
      fc.constantFrom(1, 25.4),
      (low, span, unit) => {
        const high = low + span;
        const { min, max, ticks } = evenScale(low, high, unit);
        const dust = 1e-6 * (max - min);
        expect(min).toBeLessThanOrEqual(low + dust);
        expect(max).toBeGreaterThanOrEqual(high - dust);
        expect([ticks[0], ticks.at(-1)]).toEqual([min, max]);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(8);
        const step = (max - min) / (ticks.length - 1) / unit;
        const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
        expect([1, 2, 2.5, 5].some((round) => Math.abs(lead - round) < 1e-5)).toBe(true);
      },
    ),
  );
});

test('a scale of nothing still has two ends', () => {
  const { min, max, ticks } = evenScale(0, 0);
  expect(max).toBeGreaterThan(min);
  expect(ticks).toEqual([min, max]);
  expect(min).toBe(0);
});
