import { describe, expect, it } from 'vitest';
import { mouthAgainstGap } from '../../../sim/decide/mouth-against-gap';
import {
  mouthAgainstGapSentence,
  mouthAgainstGapTable,
  mouthMeaning,
  mouthSentence,
  mouthTable,
} from '../../../sim/wording/mouth';

const SPREAD = { mean: 0.02, sd: 3, p05: -5.04, p50: 0.01, p95: 5.06 };

describe('the mouth', () => {
  it('stands open, overlaps or just closes', () => {
    expect(mouthSentence(SPREAD, 'metric')).toBe(
      'With all joints but the last pulled tight, the last just closes in the middle ring; 90 of 100 rings lie between an overlap of 5.0 mm and an opening of 5.1 mm.',
    );
    expect(mouthSentence({ ...SPREAD, p50: 2 }, 'metric')).toContain('the last stands open by 2.0 mm');
    expect(mouthSentence({ ...SPREAD, p50: -25.4 }, 'inch')).toContain('the last overlaps by 1.00 in');
  });

  it('means something else for each way of assembling', () => {
    expect(mouthMeaning('allAtOnce', 8, 3)).toContain('all 8 joints give');
    expect(mouthMeaning('oneByOne', 8, 3)).toContain('only the last 3 joints');
    expect(mouthMeaning('twoHalves', 8, 3)).toContain('truing');
    expect(mouthMeaning('allAtOnce', 8, 3)).toContain('all 16 faces');
  });

  it('makes a table with overlaps below 0', () => {
    expect(mouthTable(SPREAD, 'metric').rows).toEqual([
      ['5 of 100 rings below', '-5.0 mm'],
      ['Half of the rings below', '0.0 mm'],
      ['95 of 100 rings below', '5.1 mm'],
      ['Mean', '0.0 mm'],
      ['Standard deviation', '3.0 mm'],
    ]);
  });
});

describe('mouth against gap', () => {
  // Rings with mouths from −10 to 10 mm whose gap is the opening's twentieth: by hand, over 0.2 mm from 4 mm on.
  const mouthMm = Float64Array.from({ length: 2001 }, (_, k) => ((k * 7) % 2001) / 100 - 10);
  const showGapMm = mouthMm.map((mm) => Math.max(0, mm) / 20);
  const found = mouthAgainstGap(mouthMm, showGapMm, 0.2);

  it('counts each quarter by itself', () => {
    expect(found.lowerMm).toBeCloseTo(-5, 1);
    expect(found.upperMm).toBeCloseTo(5, 1);
    expect(found.highest.value).toBe(1);
    expect(found.lowest.value).toBe(0);
    // Of the half between −5 and 5 mm, those from 4 to 5: one in ten.
    expect(found.middle.value).toBeCloseTo(0.1, 2);
  });

  it('is told from the widest mouth down', () => {
    expect(mouthAgainstGapSentence(found, 0.2, 'metric')).toMatch(
      /^A gap over 0\.20 mm is left in all .* of the rings whose mouth is open by more than 5\.0 mm, in none .* of those overlapping by more than 5\.0 mm, and in 10 in 100 of the half between\.$/,
    );
    expect(mouthAgainstGapTable(found, 0.2, 'metric').rows.map(([name]) => name)).toEqual([
      'below -5.0 mm: the lowest quarter',
      '-5.0 mm to 5.0 mm: the half between',
      'above 5.0 mm: the highest quarter',
    ]);
  });
});
