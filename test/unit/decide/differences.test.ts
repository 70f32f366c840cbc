/** Methods held against each other: paired differences, and the chance of making the best piece of all. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aheadChance } from '../../../sim/decide/chance-ahead';
import { bestChances, methodDifferences } from '../../../sim/decide/differences';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import { Moments } from '../../../sim/statistics/moments';
import { sortedCopy } from '../../../sim/statistics/quantiles';
import { type MethodChanges, projectWith } from '../../support/projects';

const COSTS = { batch: 1, stockPerRing: 40, ratePerHour: 30, assemblyMinutes: 30, remedyMinutes: 20 };
const run = (method: MethodChanges, trials = 8000, seed = 5): MethodResult =>
  finish(runMethod(projectWith({ costs: COSTS, run: { rule: 'touch', seed }, method }), 0, { trials }));

const rough = run({ tilt: { sharedDeg: 0.15 } });
const fine = run({ tilt: { sharedDeg: 0.1 } });

describe('the difference of two methods', () => {
  test('is nothing, for certain, between a method and itself', () => {
    const nothing = { value: 0, low: 0, high: 0 };
    expect(methodDifferences(fine, fine)).toEqual({
      yield: nothing,
      showGapMeanMm: nothing,
      showGapP95Mm: nothing,
      cost: nothing,
    });
  });

  test('is that of their figures, and known better than from runs of their own', () => {
    const difference = methodDifferences(rough, fine);
    const [a, b] = [rough.prediction, fine.prediction];
    expect(difference.yield.value).toBeCloseTo(a.yield.value - b.yield.value, 12);
    expect(difference.showGapMeanMm.value).toBeCloseTo(a.showGapMm.mean - b.showGapMm.mean, 12);
    expect(difference.showGapP95Mm.value).toBeCloseTo(a.showGapMm.p95 - b.showGapMm.p95, 12);
    expect(difference.cost!.value).toBeCloseTo(a.cost.perGoodPiece! - b.cost.perGoodPiece!, 12);
    for (const { value, low, high } of [difference.yield, difference.showGapMeanMm, difference.showGapP95Mm]) {
      expect(low).toBeLessThan(value);
      expect(high).toBeGreaterThan(value);
    }
    const apart = 1.96 * Math.hypot(a.showGapMm.sd, b.showGapMm.sd) * Math.sqrt(1 / 8000);
    expect(difference.showGapMeanMm.high - difference.showGapMeanMm.value).toBeLessThan(0.5 * apart);
  });

  test('turns its sign with the order', () => {
    const [one, other] = [methodDifferences(rough, fine), methodDifferences(fine, rough)];
    for (const key of ['yield', 'showGapMeanMm', 'showGapP95Mm', 'cost'] as const) {
      expect(one[key]!.value).toBeCloseTo(-other[key]!.value, 12);
      expect(one[key]!.low).toBeCloseTo(-other[key]!.high, 12);
    }
  });

  test('has no cost where a method makes nothing', () => {
    const hopeless = run({ tilt: { biasDeg: 4 } }, 400);
    expect(methodDifferences(hopeless, fine).cost).toBeNull();
    // rings beyond the shorter run are left out
    const firstGood = new Moments().add(Array.from(fine.byRing.good.subarray(0, 400))).mean;
    expect(methodDifferences(fine, hopeless).yield.value).toBeCloseTo(firstGood, 12);
  });

  // derived: gaps of the shared tilt alone are max(0, −2·L·δ), so the mean difference is exact: 2·L·Δσ/√(2π)
  test('holds the exact difference of the mean gap in about 95 % of 100 seeds', () => {
    const gapPerDeg = (2 * (18 / Math.cos(Math.PI / 8)) * Math.PI) / 180;
    const exact = (gapPerDeg * 0.05) / Math.sqrt(2 * Math.PI);
    let held = 0;
    for (let seed = 0; seed < 100; seed++) {
      const flush = { assembly: { ends: 'flush' } } as const;
      const [a, b] = [0.15, 0.1].map((sharedDeg) => run({ ...flush, tilt: { sharedDeg } }, 200, seed));
      const { low, high } = methodDifferences(a!, b!).showGapMeanMm;
      if (low <= exact && exact <= high) held++;
    }
    // four standard errors of a share of 100
    expect(Math.abs(held - 95)).toBeLessThan(4 * Math.sqrt(100 * 0.95 * 0.05));
  });
});

interface Gaps {
  sample: { showGapMm: Float64Array; otherwiseGoodShowGapMm: Float64Array };
  byRing: { showGapMm: Float64Array };
}

const gapsOf = (gaps: readonly number[]): Gaps => ({
  sample: { showGapMm: sortedCopy(gaps), otherwiseGoodShowGapMm: new Float64Array(0) },
  byRing: { showGapMm: Float64Array.from(gaps) },
});

/** One piece of each, every way there is; the smallest gap wins, and equal ones share the win. */
function byCounting(samples: readonly number[][]): number[] {
  const wins = samples.map(() => 0);
  const walk = (chosen: number[]): void => {
    if (chosen.length < samples.length) {
      for (const gap of samples[chosen.length]!) walk([...chosen, gap]);
      return;
    }
    const least = Math.min(...chosen);
    const winners = chosen.flatMap((gap, i) => (gap === least ? [i] : []));
    for (const i of winners) wins[i]! += 1 / winners.length;
  };
  walk([]);
  const ways = samples.reduce((product, sample) => product * sample.length, 1);
  return wins.map((won) => won / ways);
}

describe('the chance of making the best piece', () => {
  const few = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 6 });

  test('is the share of all ways to take one piece of each, ties shared', () => {
    fc.assert(
      fc.property(fc.array(few, { minLength: 2, maxLength: 4 }), (samples) => {
        const chances = bestChances(samples.map(gapsOf));
        byCounting(samples).forEach((exact, i) => {
          expect(chances[i]!.value).toBeCloseTo(exact, 12);
        });
      }),
      { seed: 71, numRuns: 200 },
    );
  });

  test('adds up to 1, and for two methods is the chance of being ahead', () => {
    const chances = bestChances([rough, fine, run({ tilt: { perCutDeg: 0.1 } })]);
    expect(chances.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(1, 12);
    const [one, other] = bestChances([rough, fine]);
    const ahead = aheadChance(rough.sample, fine.sample);
    expect(one!.value).toBeCloseTo(ahead.value, 12);
    expect(other!.value).toBeCloseTo(1 - ahead.value, 12);
    expect(one!.low).toBeLessThan(one!.value);
    expect(one!.high).toBeGreaterThan(one!.value);
    expect(one!.high - one!.low).toBeLessThan(0.05);
  });

  test('says nothing for certain from too few rings', () => {
    const [one] = bestChances([gapsOf([1, 2, 3]), gapsOf([2, 3, 4])]);
    expect([one!.low, one!.high]).toEqual([0, 1]);
  });
});
