/** The error budget: one line a source, what the gap would be without it, and nothing else changed. */
import { describe, expect, test } from 'vitest';
import { budgetLines, budgetSources } from '../../../sim/budget/budget';
import { RADIANS_PER_DEGREE } from '../../../sim/geometry/ring';
import type { Project } from '../../../sim/project/document';
import { runBlock } from '../../../sim/run/block';
import { BLOCK_TRIALS } from '../../../sim/run/block-loop';
import { methodPlan } from '../../../sim/run/plan';
import { normalQuantile } from '../../../sim/statistics/normal-distribution';
import { selectQuantile } from '../../../sim/statistics/quantiles';
import { answerTo } from '../../support/answer-to';
import { type MethodChanges, projectWith } from '../../support/projects';

const MIXED: MethodChanges = {
  sequence: 'swapSides',
  tilt: { sharedDeg: 0.08, biasDeg: 0.02, perCutDeg: 0.05 },
  guide: { seatMm: 0.1 },
  blade: { forceWithinCutN: 2, stiffnessNPerMm: 40 },
};
const project = (method: MethodChanges): Project => projectWith({ method, run: { seed: 23 } });
const budgetOf = async (method: MethodChanges, rings = 2000) => {
  const { budget } = await answerTo(project(method), 0, { kind: 'budget', rings, indexRings: 0 });
  return budget;
};

/** 95th percentile show gap of one block of rings. */
const p95 = (method: MethodChanges, rings: number): number =>
  selectQuantile(runBlock(methodPlan(project(method), 0, { sizes: false }), 23, 0, rings).showGapMm, 0.95);

const budget = await budgetOf(MIXED);

describe('the budget of a method', () => {
  test('has one line for every source that does anything, in the order of the tables, with shares that add up to 1', () => {
    const names = ['tiltShared', 'tiltPerCut', 'seat', 'bulge'];
    expect(budget.sources.map(({ source }) => source)).toEqual(names);
    expect(budgetSources(project(MIXED), 0)).toEqual(names);
    expect(budget.sources.reduce((sum, { varianceShare }) => sum + varianceShare, 0)).toBeCloseTo(1, 12);
    expect(budget.trials).toBe(2000);
    expect(budgetLines(budget).map((line) => Object.keys(line))).toEqual(
      names.map(() => ['source', 'varianceShare', 'showGapP95WithoutMm']),
    );
  });

  test('has the gap of the method itself, and for each source that of the method with its figures at 0', () => {
    expect(budget.showGapP95Mm).toBe(p95(MIXED, 2000));
    const without: MethodChanges[] = [
      { ...MIXED, tilt: { perCutDeg: 0.05 } },
      { ...MIXED, tilt: { sharedDeg: 0.08, biasDeg: 0.02 } },
      { ...MIXED, guide: {} },
      { ...MIXED, blade: { stiffnessNPerMm: 40 } },
    ];
    budget.sources.forEach((line, i) => {
      expect(line.showGapP95WithoutMm, line.source).toBeCloseTo(p95(without[i]!, 2000), 12);
      expect(line.showGapP95ChangeMm.value).toBeCloseTo(line.showGapP95WithoutMm - budget.showGapP95Mm, 12);
    });
  });

  test('of the tilt alone is all the tilt’s; without it every joint is tight', async () => {
    const { sources, showGapP95Mm } = await budgetOf(
      { tilt: { sharedDeg: 0.1 }, assembly: { ends: 'flush' } },
      2 * BLOCK_TRIALS,
    );
    expect(sources).toHaveLength(1);
    expect(sources[0]!.varianceShare).toBe(1);
    expect(sources[0]!.showGapP95WithoutMm).toBe(0);
    // derived: 2·L·σ·z, L = 18 / cos 22.5°; four standard errors of a 95th percentile, which is 2 % of it here
    const exact = 2 * (18 / Math.cos(Math.PI / 8)) * 0.1 * RADIANS_PER_DEGREE * normalQuantile(0.95);
    expect(Math.abs(showGapP95Mm - exact)).toBeLessThan(0.06 * exact);
  });

  test('shows a source that does nothing as just that, on the same luck', async () => {
    // out of square the guide only makes an upright ring conical
    const { sources } = await budgetOf({
      tilt: { sharedDeg: 0.1 },
      guide: { zeroDeg: 0.2 },
      assembly: { ends: 'flush' },
    });
    const zero = sources.find(({ source }) => source === 'guideZero')!;
    expect(zero.varianceShare).toBeLessThan(1e-12);
    expect(Math.abs(zero.showGapP95ChangeMm.value)).toBeLessThan(1e-7);
    expect(zero.showGapP95ChangeMm.high - zero.showGapP95ChangeMm.low).toBeLessThan(1e-6);
  });

  test('counts the tilt as test cuts leave it', async () => {
    const tested = async (test: MethodChanges['test']) => {
      const { sources } = await budgetOf({ tilt: { sharedDeg: 0.3, perCutDeg: 0.05 }, test: test! });
      return sources[0]!.varianceShare;
    };
    const untested = await tested({ kind: 'none' });
    const read = await tested({ kind: 'fullRing', maxRounds: 2, readingMm: 0.1, stopWhenMm: 0.2 });
    expect(untested).toBeGreaterThan(0.9);
    expect(read).toBeLessThan(0.5);
  });

  test('of a perfect method is empty', async () => {
    expect((await budgetOf({}, 500)).sources).toEqual([]);
  });
});
