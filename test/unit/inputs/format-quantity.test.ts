import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatAngle, formatLength } from '../../../renderer/inputs/format-quantity';
import { parseAngle, parseLength, parsePlain } from '../../../renderer/inputs/parse-quantity';
import { plainNumber } from '../../../sim/wording/plain-number';
import { figureOf } from './figure-of';

describe('a length is shown', () => {
  it('in mm to a thousandth, without zeros at the end', () => {
    expect(formatLength(600, 'metric')).toBe('600');
    expect(formatLength(600.0751234, 'metric')).toBe('600.075');
    expect(formatLength(0.15, 'metric', { unit: true })).toBe('0.15 mm');
  });

  it('rounded as it is written, also where the machine keeps a shade less', () => {
    expect(600.0749999999999).toBeLessThan(600.075);
    expect(formatLength(600.0749999999999, 'metric', { decimals: 2 })).toBe('600.08');
  });

  it('with three digits however small it is, never as a power of ten', () => {
    expect(formatLength(0.0012345, 'metric')).toBe('0.00123');
    expect(plainNumber(1e-9)).toBe('0.000000001');
    expect(plainNumber(1e12)).toBe('1000000000000');
  });

  it('never as minus nothing', () => {
    expect(plainNumber(-0)).toBe('0');
    expect(plainNumber(-1e-15)).toBe('0');
    expect(formatLength(-0.01, 'inch', { fractions: true })).not.toMatch(/^-0$/);
  });

  // Steel-square figures against 12 inches, from old steel-square books: octagon 4 31/32, hexagon 6 15/16.
  it('in inches as the nearest sixty-fourth that can be read from a rule', () => {
    const against12 = (sides: number) => 25.4 * 12 * Math.tan(Math.PI / sides);
    expect(formatLength(against12(8), 'inch', { fractions: true, unit: true })).toBe('4 31/32 in');
    expect(formatLength(25.4 * (6 + 15 / 16), 'inch', { fractions: true })).toBe('6 15/16');
    expect(formatLength(25.4 * 3, 'inch', { fractions: true })).toBe('3');
    expect(formatLength(-25.4 * 1.5, 'inch', { fractions: true })).toBe('-1 1/2');
  });

  it('in decimals where a fraction would lose it, as a gap', () => {
    expect(formatLength(0.15, 'inch', { fractions: true })).toBe('0.00591');
    expect(formatLength(25.4 / 64, 'inch', { fractions: true })).toBe('1/64');
    expect(formatLength(0, 'inch', { fractions: true })).toBe('0');
  });
});

describe('an angle is shown', () => {
  it('in decimals or in degrees and minutes, carrying full minutes over', () => {
    expect(formatAngle(22.5, 'decimal')).toBe('22.5°');
    expect(formatAngle(22.5, 'minutes')).toBe('22°30′');
    expect(formatAngle(28.8791, 'minutes')).toBe('28°52.7′');
    expect(formatAngle(29.9999, 'minutes')).toBe('30°00′');
    expect(formatAngle(-0.1, 'minutes')).toBe('-0°06′');
    expect(formatAngle(-0.0001, 'minutes')).toBe('0°00′');
  });
});

describe('what is shown can be read again', () => {
  const lengthMm = fc.double({ min: -20_000, max: 20_000, noNaN: true });

  it('and gives the length to half of the last figure shown', () => {
    fc.assert(
      fc.property(lengthMm, (mm) => {
        expect(Math.abs(figureOf(parseLength(formatLength(mm, 'metric'), 'metric')) - mm)).toBeLessThan(0.000501);
        expect(Math.abs(figureOf(parseLength(formatLength(mm, 'inch'), 'inch')) - mm)).toBeLessThan(25.4 * 0.0000501);
        const fraction = formatLength(mm, 'inch', { fractions: true });
        expect(Math.abs(figureOf(parseLength(fraction, 'inch')) - mm)).toBeLessThan((25.4 / 128) * 1.0001);
      }),
    );
  });

  it('whichever unit is displayed meanwhile, when the unit is shown with it', () => {
    fc.assert(
      fc.property(lengthMm, fc.constantFrom('metric' as const, 'inch' as const), (mm, display) => {
        const shown = formatLength(mm, display, { unit: true });
        const readings = (['metric', 'inch'] as const).map((other) => figureOf(parseLength(shown, other)));
        expect(readings[0]).toBe(readings[1]);
      }),
    );
  });

  it('and gives exactly what a rule shows', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 500 }), (sixtyFourths) => {
        const mm = (25.4 * sixtyFourths) / 64;
        expect(figureOf(parseLength(formatLength(mm, 'inch', { fractions: true }), 'inch'))).toBeCloseTo(mm, 9);
      }),
    );
  });

  it('and gives the angle', () => {
    fc.assert(
      fc.property(fc.double({ min: -359, max: 359, noNaN: true }), (deg) => {
        expect(Math.abs(figureOf(parseAngle(formatAngle(deg, 'decimal'))) - deg)).toBeLessThan(0.0000501);
        expect(Math.abs(figureOf(parseAngle(formatAngle(deg, 'minutes'))) - deg)).toBeLessThan(0.0501 / 60);
      }),
    );
  });

  it('and gives the number', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        expect(Math.abs(figureOf(parsePlain(plainNumber(value, 4))) - value)).toBeLessThan(0.0000501);
      }),
    );
  });
});
