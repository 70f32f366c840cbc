import { expect, test } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import type { Interval, SpreadPart } from '../../../sim/statistics/estimates';
import { quantileInterval, sortedCopy } from '../../../sim/statistics/quantiles';

const PARTS = { p05: 0.05, p50: 0.5, p95: 0.95 } as const;

function run(trials: number, seed: number): MethodResult {
  const project = exampleProject();
  return finish(runMethod({ ...project, run: { ...project.run, trials, seed } }, 1));
}

test('the percentiles’ intervals are those of the rings in order', () => {
  const result = run(700, 3);
  const ascending = sortedCopy(result.byRing.mouthMm);
  for (const part of Object.keys(PARTS) as SpreadPart[]) {
    const { low, high } = quantileInterval(ascending, PARTS[part]);
    expect(result.intervals.mouthMm[part]).toEqual({ low, high });
  }
});

test('the intervals hold what many more rings come to, and miss it about as seldom as they say', () => {
  const SEEDS = 60;
  const many = run(60_000, 1000);
  const few = Array.from({ length: SEEDS }, (_, seed) => run(400, seed));
  // 60 intervals at 95 % miss 3 times on average, and more than 9 times in 1 of 1,000 (binomial distribution).
  const misses = (truth: number, interval: (result: MethodResult) => Interval): number =>
    few.filter((result) => truth < interval(result).low || truth > interval(result).high).length;
  const { hiddenGapMm, mouthMm, clearOpeningMm } = many.prediction;
  const seen = {
    hiddenGap: misses(hiddenGapMm.p95, ({ intervals }) => intervals.hiddenGapMm.p95),
    mouthLow: misses(mouthMm.p05, ({ intervals }) => intervals.mouthMm.p05),
    mouth: misses(mouthMm.p50, ({ intervals }) => intervals.mouthMm.p50),
    clearOpening: misses(clearOpeningMm.p50, ({ intervals }) => intervals.clearOpeningMm.p50),
    outOfRound: misses(many.outOfRoundMm.p95, ({ intervals }) => intervals.outOfRoundMm.p95),
    step: misses(many.stepMm.p95, ({ intervals }) => intervals.stepMm.p95),
  };
  for (const [what, count] of Object.entries(seen)) expect(count, what).toBeLessThanOrEqual(9);
  expect(Object.values(seen).reduce((a, b) => a + b, 0)).toBeGreaterThan(0);
});
