import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalQuantile } from '../../../sim/statistics/normal-distribution';
import { wilson } from '../../../sim/statistics/wilson';

const counted = fc.integer({ min: 1, max: 5000 }).chain((trials) => fc.tuple(fc.nat(trials), fc.constant(trials)));

test('each end of the interval is a share from which the count is exactly z standard errors away', () => {
  fc.assert(
    fc.property(counted, fc.double({ min: 0.5, max: 0.999, noNaN: true }), ([successes, trials], level) => {
      const { value, low, high } = wilson(successes, trials, level);
      const z = normalQuantile((1 + level) / 2);
      for (const end of [low, high]) {
        if (end === 0 || end === 1) continue;
        expect(Math.abs(value - end) / Math.sqrt((end * (1 - end)) / trials)).toBeCloseTo(z, 6);
      }
    }),
  );
});

test('the interval holds the share, lies within 0 and 1 and mirrors when successes and failures change places', () => {
  fc.assert(
    fc.property(counted, ([successes, trials]) => {
      const { value, low, high } = wilson(successes, trials);
      const mirrored = wilson(trials - successes, trials);
      expect(0 <= low && low <= value && value <= high && high <= 1 && low < high).toBe(true);
      expect(mirrored.low).toBeCloseTo(1 - high, 12);
    }),
  );
});

test('nothing tried says nothing; none and all reach the ends exactly', () => {
  expect(wilson(0, 0)).toEqual({ value: 0, low: 0, high: 1 });
  expect(wilson(0, 50)).toMatchObject({ value: 0, low: 0 });
  expect(wilson(50, 50)).toMatchObject({ value: 1, high: 1 });
});

test('counts and levels that cannot be are refused with a sentence', () => {
  expect(() => wilson(4, 3)).toThrow('4 successes in 3 trials cannot be.');
  expect(() => wilson(-1, 3)).toThrow(RangeError);
  expect(() => wilson(1, 3, 1)).toThrow('Confidence level 1 is not between 0 and 1.');
  expect(() => wilson(1, 3, 0)).toThrow('Confidence level 0 is not between 0 and 1.');
});
