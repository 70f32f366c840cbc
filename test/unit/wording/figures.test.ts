import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wilson } from '../../../sim/statistics/wilson';
import {
  angleText,
  comparedGaps,
  countText,
  decimalsFor,
  gapText,
  givenLengthText,
  lengthText,
  limitText,
  listText,
  minutesText,
  moneyText,
  piecesText,
  shareText,
  shareWithInterval,
  timeText,
} from '../../../sim/wording/figures';

describe('lengths', () => {
  it('gives mm to a hundredth, without idle zeros', () => {
    expect(lengthText(280, 'metric')).toBe('280 mm');
    expect(lengthText(75.026, 'metric')).toBe('75.03 mm');
    expect(lengthText(-0.001, 'metric')).toBe('0 mm');
  });

  it('gives inches in decimals or to the nearest 1/64', () => {
    expect(lengthText(25.4, 'inch')).toBe('1 in');
    expect(lengthText(280, 'inch')).toBe('11.024 in');
    // 23 5/8 in is 600.075 mm by the definition of the inch.
    expect(lengthText(600.075, 'inch', { fractions: true })).toBe('23 5/8 in');
    expect(lengthText(25.4 / 64, 'inch', { fractions: true })).toBe('1/64 in');
    expect(lengthText(25.4 * (1 - 1 / 256), 'inch', { fractions: true })).toBe('1 in');
    expect(lengthText(-25.4 / 2, 'inch', { fractions: true })).toBe('-1/2 in');
    expect(lengthText(0.01, 'inch', { fractions: true })).toBe('0 in');
  });

  it('shows no more digits than the uncertainty leaves, and all that it leaves', () => {
    expect(lengthText(249.8123, 'metric', { uncertaintyMm: 0.02 })).toBe('249.81 mm');
    expect(lengthText(249.8, 'metric', { uncertaintyMm: 0.02 })).toBe('249.80 mm');
    expect(lengthText(249.8123, 'metric', { uncertaintyMm: 0.3 })).toBe('249.8 mm');
    expect(lengthText(249.8123, 'metric', { uncertaintyMm: 4 })).toBe('250 mm');
    expect(lengthText(25.4, 'inch', { uncertaintyMm: 0.3 })).toBe('1.00 in');
  });

  it.each([
    [0.004, 3],
    [0.03, 2],
    [0.1, 1],
    [0.99, 1],
    [3, 0],
    [300, 0],
    [1e-9, 4],
    [0, 4],
  ])('with an uncertainty of %f keeps %i decimals', (uncertainty, decimals) => {
    expect(decimalsFor(uncertainty, 4)).toBe(decimals);
  });
});

describe('what was typed in', () => {
  it.each([
    [0.005, 'metric', '0.005 mm'],
    [0.1 + 0.2, 'metric', '0.3 mm'],
    [1e-7, 'metric', '0.0000001 mm'],
    [25.4 / 64, 'inch', '0.015625 in'],
    [0.005, 'inch', '0.0001969 in'],
    [1250, 'inch', '49.21 in'],
  ] as const)('is never shown rounder than it is: %s in %s', (mm, display, text) => {
    expect(givenLengthText(mm, display)).toBe(text);
  });
});

describe('gaps', () => {
  it('gives a hundredth of a mm, and a thousandth where the rings allow it', () => {
    expect(gapText(0.1234, 'metric')).toBe('0.12 mm');
    expect(gapText(0.1234, 'metric', 0.004)).toBe('0.123 mm');
    expect(gapText(0.1234, 'metric', 0.3)).toBe('0.12 mm');
    expect(gapText(0, 'metric')).toBe('0.00 mm');
    expect(gapText(0.254, 'inch')).toBe('0.010 in');
  });

  it('gives no number over 2 mm', () => {
    expect(gapText(2, 'metric')).toBe('2.00 mm');
    expect(gapText(2.001, 'metric')).toBe('over 2 mm');
    expect(gapText(Number.POSITIVE_INFINITY, 'metric')).toBe('over 2 mm');
    expect(gapText(50, 'inch')).toBe('over 0.079 in');
  });
});

describe('angles, minutes, money, counts', () => {
  it('gives degrees or degrees and minutes', () => {
    expect(angleText(22.5)).toBe('22.5°');
    expect(angleText(28.8791)).toBe('28.88°');
    expect(angleText(22.5, 'minutes')).toBe('22°30′');
    expect(angleText(14.9999, 'minutes')).toBe('15°00′');
    expect(angleText(-0.1, 'minutes')).toBe('-0°06′');
    expect(angleText(-0.001, 'minutes')).toBe('0°00′');
  });

  it('gives hours from an hour and a half on', () => {
    expect(minutesText(76.4)).toBe('76 min');
    expect(minutesText(98)).toBe('1 h 38 min');
    expect(minutesText(120.2)).toBe('2 h 00 min');
    expect(timeText(76.4, { low: 74.6, high: 78.2 })).toBe('76 min (75 to 78)');
    expect(timeText(98, { low: 96, high: 100 })).toBe('1 h 38 min (1 h 36 to 1 h 40)');
    expect(timeText(76, { low: 75.9, high: 76.1 })).toBe('76 min');
    expect(timeText(null, null)).toBe('–');
  });

  it('gives money without a currency, to what is certain of it', () => {
    expect(moneyText(82.371)).toBe('82.37');
    expect(moneyText(82.371, 0.2)).toBe('82.4');
    expect(moneyText(1_234_567.8, 600)).toBe('1,234,568');
    expect(moneyText(1234.5)).toBe('1,234.50');
    expect(moneyText(-1234.5, 3)).toBe('-1,235');
  });

  it('parts thousands', () => {
    expect([0, 999, 1000, 100_000, 10_000_000, -1234].map(countText)).toEqual([
      '0',
      '999',
      '1,000',
      '100,000',
      '10,000,000',
      '-1,234',
    ]);
  });
});

describe('chances', () => {
  it('are told in 100', () => {
    expect(shareText({ value: 0.831, low: 0.82, high: 0.84 })).toBe('83 in 100');
    expect(shareText({ value: 0.02, low: 0.01, high: 0.04 })).toBe('2 in 100');
  });

  it('below 1 in 50 are told in counts', () => {
    // 3 of 1,000: Wilson's 95 % interval is 0.00102 to 0.00878 (E. B. Wilson 1927).
    expect(shareText(wilson(3, 1000))).toBe('about 3 in 1,000 (1 to 9)');
    expect(shareText({ value: 0.0199, low: 0.015, high: 0.026 })).toBe('about 20 in 1,000 (15 to 26)');
    expect(shareText(wilson(1, 100_000))).toBe('about 1 in 100,000 (0 to 6)');
  });

  it('never seen are bounded, not called impossible', () => {
    // No success in 1,000: the upper end is z²/(n + z²) = 0.00383.
    expect(shareText(wilson(0, 1000))).toBe('none (at most 4 in 1,000)');
    expect(shareText(wilson(0, 100_000))).toBe('none (at most 4 in 100,000)');
  });

  it('near certainty count the failures', () => {
    expect(shareText(wilson(997, 1000))).toBe('all but about 3 in 1,000 (1 to 9)');
    expect(shareText(wilson(1000, 1000))).toBe('all (but for at most 4 in 1,000)');
    expect(shareText({ value: 0.98, low: 0.97, high: 0.99 })).toBe('98 in 100');
  });

  it('without a single ring are not known', () => {
    expect(shareText(wilson(0, 0))).toBe('not known yet');
    expect(shareWithInterval(wilson(0, 0))).toBe('not known yet');
  });

  it('with their interval show a tenth only where it means something', () => {
    expect(shareWithInterval({ value: 0.831, low: 0.821, high: 0.841 })).toBe('83 in 100 (82 to 84)');
    expect(shareWithInterval({ value: 0.831, low: 0.828, high: 0.834 })).toBe('83.1 in 100 (82.8 to 83.4)');
    expect(shareWithInterval(wilson(3, 1000))).toBe('about 3 in 1,000 (1 to 9)');
  });

  it('start a sentence in the right number', () => {
    const said = (value: Parameters<typeof piecesText>[0]) => piecesText(value, 'fits', 'fit');
    expect(said({ value: 0.5, low: 0.4, high: 0.6 })).toBe('50 in 100 pieces fit');
    expect(said(wilson(0, 1000))).toBe('no piece fits (at most 4 in 1,000)');
    expect(said(wilson(1000, 1000))).toBe('every piece fits (but for at most 4 in 1,000)');
    expect(said(wilson(0, 0))).toBe('it is not known yet how many pieces fit');
  });
});

describe('lists', () => {
  it('end in and', () => {
    expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map((parts) => listText(parts))).toEqual([
      '',
      'A',
      'A and B',
      'A, B and C',
    ]);
  });
});

it('of two gaps held against each other the digits tell how far they are apart', () => {
  expect(comparedGaps(0.312, 0.118, 'metric')).toEqual(['0.31 mm', '0.12 mm']);
  // Rounded to hundredths they would be 0 and 0; 0.0034 is 0.001 above 0.0024, not 0.002.
  expect(comparedGaps(0.0034, 0.0024, 'metric')).toEqual(['0.003 mm', '0.002 mm']);
  expect(comparedGaps(0.153, 0.149, 'metric')).toEqual(['0.153 mm', '0.149 mm']);
  expect(comparedGaps(0.0034 * 25.4, 0.0026 * 25.4, 'inch')).toEqual(['0.0034 in', '0.0026 in']);
  expect(comparedGaps(0.15, 0.15, 'metric')).toEqual(['0.15 mm', '0.15 mm']);
  expect(comparedGaps(3, 0.5, 'metric')).toEqual(['over 2 mm', '0.50 mm']);
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.double({ min: 0.002, max: 1, noNaN: true }),
      (low, by) => {
        const [a, b] = comparedGaps(low, Math.min(2, low + by), 'metric').map((text) => Number.parseFloat(text));
        const apart = Math.min(2, low + by) - low;
        if (apart >= 0.002) expect(Math.abs((b ?? 0) - (a ?? 0) - apart)).toBeLessThanOrEqual(0.2 * apart);
      },
    ),
  );
});

it('a limit is said as it was put in', () => {
  // 0.15 mm are 0.0059055 in.
  expect(limitText(0.15, 'inch')).toBe('0.00591 in');
  expect(limitText(0.005, 'metric')).toBe('0.005 mm');
  expect(limitText(0.2, 'metric')).toBe('0.20 mm');
  expect(limitText(25.4 / 64, 'inch')).toBe('0.0156 in');
});
