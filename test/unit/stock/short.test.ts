import { describe, expect, test } from 'vitest';
import { pitchMm, type RingGeometry, stripNeededMm } from '../../../sim/geometry/ring';
import { DEFAULT_BLADE, DEFAULT_STOCK } from '../../../sim/project/defaults';
import type { Blade, Sequence, Stock } from '../../../sim/project/document';
import { fillNormals } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import { Moments } from '../../../sim/statistics/moments';
import { normalCdf } from '../../../sim/statistics/normal-distribution';
import { type StaveCount, type StockSpread, staveCount } from '../../../sim/stock/short';
import { geometryOf } from '../../support/rings';

const geometry = geometryOf({ sides: 8, slopeDeg: 20, midWidthMm: 90, heightMm: 60, thicknessMm: 16 });

interface Case {
  sequence: Sequence;
  stripCount: number;
  /** Length beyond what is needed. */
  spareMm: number;
  kerfSigmaMm: number;
  spread: StockSpread;
}

function stockOf({ sequence, stripCount, spareMm, kerfSigmaMm }: Case): { blade: Blade; stock: Stock } {
  const blade = { ...DEFAULT_BLADE, kerfSigmaMm };
  const stock = { ...DEFAULT_STOCK, stripCount };
  const stripLengthMm = stripNeededMm(geometry, blade, sequence, stock) + spareMm;
  return { blade, stock: { ...stock, stripLengthMm } };
}

function counted(of: Case): StaveCount {
  const { blade, stock } = stockOf(of);
  return staveCount(geometry, { blade, sequence: of.sequence }, stock, of.spread)!;
}

/** Cuts stave after stave from each strip while what is left can still be held. */
function simulated(ring: RingGeometry, of: Case, trials: number): { short: number; staves: Moments } {
  const { blade, stock } = stockOf(of);
  const pitch = pitchMm(ring, blade, of.sequence);
  const kerfs = of.sequence === 'flipFace' ? 1 : 2;
  const slant = Math.cos(ring.bevelRad) * Math.cos(ring.crosscutRad);
  const generator = stream(5, 'strips', 0);
  const one = new Float64Array(1);
  const draw = (sigma: number): number => {
    fillNormals(generator, one);
    return sigma * one[0]!;
  };
  const staves = new Float64Array(trials);
  let short = 0;
  for (let trial = 0; trial < trials; trial++) {
    const shared = draw(of.spread.kerfSharedSigmaMm);
    let total = 0;
    for (let strip = 0; strip < of.stripCount; strip++) {
      let left = stock.stripLengthMm! + draw(of.spread.lengthSigmaMm) - stock.trimMm;
      while (total < ring.sides) {
        left -= pitch;
        for (let cut = 0; cut < kerfs; cut++) left -= (shared + draw(blade.kerfSigmaMm)) / slant;
        if (left < stock.holdMm) break;
        total++;
      }
    }
    staves[trial] = total;
    if (total < ring.sides) short++;
  }
  return { short: short / trials, staves: new Moments().add(staves) };
}

const CASES: Case[] = [
  {
    sequence: 'flipFace',
    stripCount: 1,
    spareMm: 4,
    kerfSigmaMm: 0.05,
    spread: { lengthSigmaMm: 3, kerfSharedSigmaMm: 0.3 },
  },
  {
    sequence: 'swapSides',
    stripCount: 1,
    spareMm: 2,
    kerfSigmaMm: 0.4,
    spread: { lengthSigmaMm: 0, kerfSharedSigmaMm: 0.2 },
  },
  {
    sequence: 'flipFace',
    stripCount: 2,
    spareMm: 4,
    kerfSigmaMm: 0.1,
    spread: { lengthSigmaMm: 2, kerfSharedSigmaMm: 0.5 },
  },
  // Room for almost one stave more on every strip: one strip often makes up for another.
  {
    sequence: 'swapSides',
    stripCount: 3,
    spareMm: 60,
    kerfSigmaMm: 0.1,
    spread: { lengthSigmaMm: 60, kerfSharedSigmaMm: 2 },
  },
];

describe('coming up short', () => {
  test.each(CASES)('agrees with cutting the strips by chance: $sequence, $stripCount strips', (of) => {
    const trials = 100_000;
    const { chanceShort, expectedStaves } = counted(of);
    const { short, staves } = simulated(geometry, of, trials);
    expect(chanceShort).toBeGreaterThan(0.02);
    // Four standard errors, one false alarm in 16,000, and what the average over the kerf may be off.
    const averaging = of.stripCount > 1 ? 0.001 : 0;
    const limit = 4 * Math.sqrt((chanceShort * (1 - chanceShort)) / trials) + averaging;
    expect(Math.abs(short - chanceShort)).toBeLessThan(limit);
    expect(Math.abs(staves.mean - expectedStaves)).toBeLessThan(4 * staves.standardError + averaging);
    // A blade half as uncertain again would be found out.
    const spread = { ...of.spread, kerfSharedSigmaMm: 1.5 * of.spread.kerfSharedSigmaMm };
    expect(Math.abs(short - counted({ ...of, spread }).chanceShort)).toBeGreaterThan(limit);
  });

  test('of one strip is one normal chance', () => {
    // derived: 8 kerfs along the strip at 1/cos 22.5°: shared 8 × 0.3, each 0.1·√8, length 2 mm, 5 mm in hand
    const along = 1 / Math.cos(Math.PI / 8);
    const sigma = Math.hypot(2, 8 * 0.3 * along, 0.1 * Math.sqrt(8) * along);
    const spread = { lengthSigmaMm: 2, kerfSharedSigmaMm: 0.3 };
    const { chanceShort, expectedStaves } = counted({
      sequence: 'flipFace',
      stripCount: 1,
      spareMm: 5,
      kerfSigmaMm: 0.1,
      spread,
    });
    expect(chanceShort).toBeCloseTo(normalCdf(-5 / sigma), 6);
    expect(expectedStaves).toBeCloseTo(8 - chanceShort, 9);
  });

  test('is out of the question without uncertainty: enough is enough, and too little is one stave short', () => {
    const certain = {
      sequence: 'flipFace',
      kerfSigmaMm: 0,
      spread: { lengthSigmaMm: 0, kerfSharedSigmaMm: 0 },
    } as const;
    for (const stripCount of [1, 2, 8]) {
      expect(counted({ ...certain, stripCount, spareMm: 0 })).toEqual({ chanceShort: 0, expectedStaves: 8 });
      expect(counted({ ...certain, stripCount, spareMm: -1 })).toEqual({
        chanceShort: 1,
        expectedStaves: 8 - stripCount,
      });
    }
  });

  test('stays right when nothing but the one kerf is uncertain', () => {
    const alone = {
      sequence: 'flipFace',
      spareMm: 1,
      kerfSigmaMm: 0,
      spread: { lengthSigmaMm: 0, kerfSharedSigmaMm: 0.5 },
    } as const;
    // Four staves on each of two strips: short as soon as the kerf takes 1/4 mm more along the strip.
    const chance = normalCdf((-0.25 * Math.cos(Math.PI / 8)) / 0.5);
    expect(Math.abs(counted({ ...alone, stripCount: 2 }).chanceShort - chance)).toBeLessThan(0.001);
  });

  test('is not asked while the strips are bought to fit', () => {
    const spread = { lengthSigmaMm: 3, kerfSharedSigmaMm: 0.1 };
    const method = { blade: DEFAULT_BLADE, sequence: 'flipFace' } as const;
    expect(staveCount(geometry, method, DEFAULT_STOCK, spread)).toBeUndefined();
  });
});
