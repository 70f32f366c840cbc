import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AIR_LIMITS, equilibriumMoisturePercent } from '../../../sim/season/moisture';

describe('equilibrium moisture', () => {
  test('is none in dry air and rises with humidity at any temperature', () => {
    const { from, to } = AIR_LIMITS.temperatureC;
    fc.assert(
      fc.property(fc.double({ min: from, max: to, noNaN: true }), fc.integer({ min: 0, max: 94 }), (t, h) => {
        expect(equilibriumMoisturePercent(t, 0)).toBe(0);
        expect(equilibriumMoisturePercent(t, h + 1)).toBeGreaterThan(equilibriumMoisturePercent(t, h));
      }),
    );
  });

  test('falls as the same damp air gets warmer', () => {
    for (let t = 5; t < 60; t += 5) {
      expect(equilibriumMoisturePercent(t + 5, 65)).toBeLessThan(equilibriumMoisturePercent(t, 65));
    }
  });

  test('refuses air that the equation was not made for', () => {
    expect(() => equilibriumMoisturePercent(20, 96)).toThrow(
      'Relative humidity 96 % is not between 0 and 95 %. Give one in that range.',
    );
    expect(() => equilibriumMoisturePercent(-5, 50)).toThrow('Temperature -5 °C is not between -1 and 130 °C.');
    expect(() => equilibriumMoisturePercent(Number.NaN, 50)).toThrow(RangeError);
  });
});
