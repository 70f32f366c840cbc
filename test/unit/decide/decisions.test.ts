/**
 * The decisions against closed forms. Test piece: eight upright staves with a shared tilt error alone, which opens every
 * joint by 2·L·δ outside when the tilt is short and inside when it is over, so that yields are areas under a normal.
 */
import { describe, expect, test } from 'vitest';
import type { Limits, Project } from '../../../sim/project/document';
import { pairedYield, type ShortRun, shortRun } from '../../../sim/run/short-run';
import { normalCdf, normalQuantile } from '../../../sim/statistics/normal-distribution';
import { answerTo } from '../../support/answer-to';
import { type MethodChanges, type ProjectChanges, projectWith } from '../../support/projects';

/** Gap per degree of tilt, by hand: 2·L·π/180 with L = 18 / cos 22.5°. */
const GAP_PER_DEG = (2 * (18 / Math.cos(Math.PI / 8)) * Math.PI) / 180;

const tilted = (
  sharedDeg: number,
  limits: Partial<Limits>,
  method: MethodChanges = {},
  rest: ProjectChanges = {},
): Project =>
  projectWith({
    ...rest,
    limits: { remedyGapMm: 0, ...limits },
    run: { rule: 'touch', seed: 17 },
    method: { assembly: { ends: 'flush' }, ...method, tilt: { sharedDeg, ...method.tilt } },
  });

/** Share of set-ups whose tilt, aimed off by `aimDeg`, keeps both limits. */
function exactYield(sharedDeg: number, limits: { showGapMm: number; hiddenGapMm: number }, aimDeg = 0): number {
  const [low, high] = [-limits.showGapMm / GAP_PER_DEG, limits.hiddenGapMm / GAP_PER_DEG];
  return normalCdf((high - aimDeg) / sharedDeg) - normalCdf((low - aimDeg) / sharedDeg);
}

describe('a few thousand rings', () => {
  const limits = { showGapMm: 0.1, hiddenGapMm: 0.2 };

  test('have the yield of the closed form', () => {
    const run = shortRun(tilted(0.2, limits), 0, 10_000);
    const exact = exactYield(0.2, limits);
    // four standard errors: 1 in 16,000 seeds
    expect(Math.abs(run.yield - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / 10_000));
    expect(run.good.reduce((sum, good) => sum + good, 0) / 10_000).toBe(run.yield);
  });

  test('draw the same luck for every variant, so that differences are known well', () => {
    const [one, other] = [shortRun(tilted(0.2, limits), 0, 4000), shortRun(tilted(0.21, limits), 0, 4000)];
    one.showGapMm.forEach((gap, k) => {
      // the same draw, a twentieth larger
      expect(other.showGapMm[k]).toBeCloseTo(1.05 * gap, 9);
    });
    const { value, low, high } = pairedYield(one, other);
    const exact = exactYield(0.2, limits) - exactYield(0.21, limits);
    // twice the 95 % interval: 1 in 11,000 seeds
    expect(Math.abs(value - exact)).toBeLessThan(high - low);
    // apart, the two shares would be uncertain by 0.02
    expect(high - low).toBeLessThan(0.012);
    expect(value).toBeCloseTo(one.yield - other.yield, 12);
  });

  test('compare by the rings that only one of two makes well (McNemar)', () => {
    const run = (good: number[]): ShortRun => {
      const none = new Float64Array(good.length);
      return { trials: good.length, showGapMm: none, hiddenGapMm: none, good: Uint8Array.from(good), yield: 0 };
    };
    // by hand: three for the first, one for the second, of eight: 0.25 ± 1.96·√((0.5 − 0.0625)/8)
    const { value, low, high } = pairedYield(run([1, 1, 1, 0, 1, 0, 1, 0]), run([0, 0, 0, 1, 1, 0, 1, 0]));
    expect(value).toBe(0.25);
    expect([low, high].map((end) => Number(end.toFixed(4)))).toEqual([-0.2083, 0.7083]);
  });
});

describe('the best aim', () => {
  test('lies midway between the limits, and makes as many pieces good as it can', async () => {
    // hidden gaps may be wide, so the tilt is best aimed over by half the difference of the limits
    const limits = { showGapMm: 0.05, hiddenGapMm: 0.25 };
    const exact = (0.25 - 0.05) / (2 * GAP_PER_DEG);
    const found = await answerTo(tilted(0.15, limits), 0, { kind: 'aim' });
    expect(Math.abs(found.aimDeg - exact)).toBeLessThan(0.02);
    const most = exactYield(0.15, limits, exact);
    expect(found.yield.low).toBeLessThan(most + 0.005);
    expect(found.yield.high).toBeGreaterThan(most - 0.005);
    const gain = most - exactYield(0.15, limits);
    expect(found.gain.low).toBeLessThan(gain + 0.005);
    expect(found.gain.high).toBeGreaterThan(gain - 0.005);
    expect(found.gain.low).toBeGreaterThan(0.1);
    for (const { aimDeg, yield: share } of found.curve) {
      const there = exactYield(0.15, limits, aimDeg);
      // 2,000 rings far from the best: five standard errors at worst
      expect(Math.abs(share.value - there)).toBeLessThan(5 * Math.sqrt(0.25 / 2000));
    }
    expect(found.curve.map(({ aimDeg }) => aimDeg)).toEqual(
      found.curve.map(({ aimDeg }) => aimDeg).sort((a, b) => a - b),
    );
  });

  test('is none where both sides have one limit, and takes out a known bias', async () => {
    const even = { showGapMm: 0.1, hiddenGapMm: 0.1 };
    expect(Math.abs((await answerTo(tilted(0.15, even), 0, { kind: 'aim' })).aimDeg)).toBeLessThan(0.02);
    const biased = tilted(0.15, even, { tilt: { biasDeg: 0.2, sharedDeg: 0.15 } });
    expect(Math.abs((await answerTo(biased, 0, { kind: 'aim' })).aimDeg + 0.2)).toBeLessThan(0.02);
  });
});

describe('the accuracy needed', () => {
  const limits = { showGapMm: 0.1, hiddenGapMm: 0.1 };
  const reach = 0.1 / GAP_PER_DEG;
  /** Spread of the tilt at which the wanted share keeps within the limits. */
  const sharedFor = (wanted: number) => reach / normalQuantile((1 + wanted) / 2);
  // a guide out of square only makes an upright ring conical: it plays no part
  const harmless: MethodChanges = { guide: { zeroDeg: 0.1 } };

  test('of the one source that matters is that of the closed form; no other source helps', async () => {
    const found = await answerTo(tilted(0.2, limits, harmless), 0, { kind: 'accuracy', wanted: 0.9 });
    expect(Math.abs(found.yieldNow - exactYield(0.2, limits))).toBeLessThan(0.03);
    const [tilt, zero] = found.sources;
    expect([tilt!.source, zero!.source]).toEqual(['tiltShared', 'guideZero']);
    // the share of 6,000 rings is known to 0.4 %, which is 2 % of the spread; three of that
    expect(Math.abs(tilt!.factor! * 0.2 - sharedFor(0.9))).toBeLessThan(0.06 * sharedFor(0.9));
    expect(tilt!.figures).toEqual([{ key: 'tilt.sharedDeg', now: 0.2, needed: 0.2 * tilt!.factor! }]);
    expect(tilt!.yieldIfPerfect).toBe(1);
    expect(zero!.factor).toBeNull();
    expect(zero!.yieldIfPerfect).toBe(found.yieldNow);
    expect(found.inTheWay).toEqual(['tiltShared']);
    const balanced = new Map(found.balanced!.map(({ source, factor }) => [source, factor]));
    expect(Math.abs(balanced.get('tiltShared')! * 0.2 - sharedFor(0.9))).toBeLessThan(0.06 * sharedFor(0.9));
    expect(balanced.get('guideZero')).toBe(1);
  });

  test('leaves room where more is reached than wanted', async () => {
    const found = await answerTo(tilted(0.1, limits, harmless), 0, { kind: 'accuracy', wanted: 0.5 });
    expect(found.yieldNow).toBeGreaterThan(0.5);
    expect(Math.abs(found.sources[0]!.factor! * 0.1 - sharedFor(0.5))).toBeLessThan(0.06 * sharedFor(0.5));
    // eight times worse is as far as it looks
    expect(found.sources[1]!.factor).toBe(8);
    expect(found.inTheWay).toEqual([]);
    expect(found.balanced!.every(({ factor }) => factor === 1)).toBe(true);
  });

  test('is shared among equal sources equally: each gives as much as the other', async () => {
    // turned over, the side error is as shared as the setting itself
    const two = tilted(0.2, limits, { tilt: { sharedDeg: 0.2, sideDeg: 0.2 } });
    const found = await answerTo(two, 0, { kind: 'accuracy', wanted: 0.8 });
    const factors = found.balanced!.map(({ factor }) => factor);
    expect(factors).toHaveLength(2);
    expect(factors[0]! / factors[1]!).toBeGreaterThan(0.85);
    expect(factors[0]! / factors[1]!).toBeLessThan(1.18);
    const together = 0.2 * Math.hypot(factors[0]!, factors[1]!);
    expect(Math.abs(together - sharedFor(0.8))).toBeLessThan(0.06 * sharedFor(0.8));
    // one alone cannot do it: the other leaves too much
    expect(found.sources.map(({ factor }) => factor)).toEqual([null, null]);
    expect([...found.inTheWay].sort()).toEqual(['tiltShared', 'tiltSide']);
  });

  test('is out of reach where perfect cuts do not fit the wish', async () => {
    const aimedOff = tilted(0.1, limits, { tilt: { sharedDeg: 0.1, aimDeg: 0.5 } });
    const found = await answerTo(aimedOff, 0, { kind: 'accuracy', wanted: 0.9 });
    expect(found.balanced).toBeNull();
    expect(found.sources[0]!.factor).toBeNull();
  });
});

describe('the value of test cuts', () => {
  const COSTS = { batch: 2, stockPerRing: 40, testStockPerRound: 8, ratePerHour: 30, assemblyMinutes: 35 };
  const rest: ProjectChanges = { costs: COSTS };
  const test0: MethodChanges['test'] = {
    kind: 'fullRing',
    maxRounds: 1,
    readingMm: 0,
    stopWhenMm: 0.5,
    dialDeg: 0,
    dialShare: 0,
  };
  const minutes = { setUp: 12, perCut: 0.5, perTestRound: 10 };

  test('is only its price where nothing needs correcting', async () => {
    const found = await answerTo(tilted(0, { showGapMm: 0.1, hiddenGapMm: 0.1 }, { test: test0, minutes }, rest), 0, {
      kind: 'testValue',
    });
    expect(found.bestRounds).toBe(0);
    expect(found.rounds.map(({ maxRounds }) => maxRounds)).toEqual([0, 1, 2, 3, 4]);
    // by hand: 8 of stock and 10 minutes at 30 an hour for the job, half of it for each of two pieces
    const [none, ...tested] = found.rounds;
    expect(none!.extraCost).toEqual({ value: 0, low: 0, high: 0 });
    for (const { extraCost, pays, cost } of tested) {
      expect(extraCost.value).toBeCloseTo(13, 9);
      expect(pays.value).toBe(0);
      expect(cost.perGoodPiece! - none!.cost.perGoodPiece!).toBeCloseTo(6.5, 9);
    }
  });

  test('is the whole job where nothing works without: and one round that reads perfectly is enough', async () => {
    const limits = { showGapMm: 0.1, hiddenGapMm: 0.1 };
    const wrong: MethodChanges = { tilt: { sharedDeg: 0.1, biasDeg: 1.5 }, test: test0, minutes };
    const found = await answerTo(tilted(0.1, limits, wrong, rest), 0, { kind: 'testValue' });
    expect(found.rounds[0]!.cost.perGoodPiece).toBeNull();
    expect(found.rounds[1]!.yield.value).toBe(1);
    expect(found.rounds[1]!.pays.value).toBe(1);
    expect(found.bestRounds).toBe(1);
  });

  test('of a method without any is shown for whole rings', async () => {
    const found = await answerTo(tilted(0.1, {}, { minutes }, rest), 0, { kind: 'testValue', trials: 400 });
    expect(found.kind).toBe('fullRing');
    expect(found.rounds[0]!.cost.testRounds).toBe(0);
    expect(found.rounds[1]!.cost.testRounds).toBe(1);
  });
});
