/** Differences, chances and needed figures as they are said: signs, units, and no more digits than are known. */
import { describe, expect, it } from 'vitest';
import { figureText } from '../../../sim/wording/accuracy';
import { indexText } from '../../../sim/wording/budget';
import {
  costDifferenceText,
  differenceTable,
  gapDifferenceText,
  shareDifferenceText,
  signedText,
} from '../../../sim/wording/differences';
import { chanceText } from '../../../sim/wording/stock';
import { resultLike, share } from './result-like';

describe('a difference', () => {
  it('always shows its sign, but for nothing', () => {
    expect([signedText(0.123, 2), signedText(-0.123, 2), signedText(-0.001, 2), signedText(0, 0)]).toEqual([
      '+0.12',
      '-0.12',
      '0.00',
      '0',
    ]);
  });

  it('of gaps has as many digits as its interval allows, in either unit', () => {
    const difference = { value: -0.1934, low: -0.2051, high: -0.1817 };
    expect(gapDifferenceText(difference, 'metric')).toBe('-0.19 mm (-0.21 to -0.18)');
    expect(gapDifferenceText({ value: -0.1934, low: -0.1951, high: -0.1917 }, 'metric')).toBe(
      '-0.193 mm (-0.195 to -0.192)',
    );
    // an inch is 25.4 mm: −0.0076, ±0.0005
    expect(gapDifferenceText(difference, 'inch')).toBe('-0.0076 in (-0.0081 to -0.0072)');
  });

  it('of gaps is no number where a ring that does not close has a part in it', () => {
    expect(gapDifferenceText({ value: 5, low: 4, high: 6 }, 'metric')).toBe('over 2 mm more');
    expect(gapDifferenceText({ value: -5, low: -6, high: -4 }, 'inch')).toBe('over 0.079 in less');
  });

  it('of shares and costs reads as they do', () => {
    expect(shareDifferenceText({ value: -0.072, low: -0.076, high: -0.068 })).toBe('-7.2 in 100 (-7.6 to -6.8)');
    expect(costDifferenceText({ value: 1234.5, low: 1200.1, high: 1268.9 })).toBe('+1,235 (+1,200 to +1,269)');
    expect(costDifferenceText({ value: -4.126, low: -4.2, high: -4.05 })).toBe('-4.13 (-4.20 to -4.05)');
    expect(costDifferenceText({ value: 0, low: 0, high: 0 })).toBe('0.00 (0.00 to 0.00)');
  });
});

describe('the table of differences', () => {
  it('has a row a method, and nothing but the chance in the row of the one held against', () => {
    const nothing = { value: 0.1, low: 0.09, high: 0.11 };
    const differences = { yield: nothing, showGapMeanMm: nothing, showGapP95Mm: nothing, cost: null };
    const compared = [
      { result: resultLike('Line'), bestChance: share(0.3, 0.29, 0.31), differences },
      { result: resultLike('Stop'), bestChance: share(0.7, 0.69, 0.71) },
    ];
    const { head, rows } = differenceTable('Stop', compared, 'metric');
    expect(head[0]).toBe('Against “Stop”');
    expect(rows).toEqual([
      ['Line', '+10 in 100 (+9 to +11)', '+0.10 mm (+0.09 to +0.11)', '–', '30 in 100 (29 to 31)'],
      ['Stop', '–', '–', '–', '70 in 100 (69 to 71)'],
    ]);
  });
});

describe('figures that answers are made of', () => {
  it('carry the unit of the field they are typed into', () => {
    expect(figureText('tilt.sharedDeg', 0.03417, 'metric')).toBe('0.034°');
    expect(figureText('width.sharedMm', 0.1234, 'metric')).toBe('0.12 mm');
    expect(figureText('width.sharedMm', 0.254, 'inch')).toBe('0.01 in');
    expect(figureText('blade.forceSigmaN', 1.234, 'inch')).toBe('1.2 N');
    expect(figureText('stock.cupMm', 0.005, 'metric')).toBe('0.005 mm');
  });

  it('let an index come out below 0, but not as minus nothing', () => {
    expect(indexText({ value: -0.001, low: -0.012, high: 0.01 })).toBe('0.00 (-0.01 to 0.01)');
  });

  it('tell an exact chance in counts when it is rare', () => {
    expect([0, 2e-5, 0.0042, 0.227, 0.9999].map(chanceText)).toEqual([
      'under 1 in 1,000,000',
      '2 in 100,000',
      '4 in 1,000',
      '23 in 100',
      'over 999 in 1,000',
    ]);
  });
});
