/**
 * A run that stops by the two-stage rule claims no more than it knows: its 95 % intervals hold the truth 95 times in a
 * hundred. The ring's only error is the tilt setting all cuts share, ends flush, so that by the touch rule every joint
 * opens by −2Lδ, or not at all, and yield, percentile and mean are known exactly.
 */
import { describe, expect, test } from 'vitest';
import { RADIANS_PER_DEGREE } from '../../sim/geometry/ring';
import type { Project } from '../../sim/project/document';
import { blockSteps } from '../../sim/run/block';
import { BLOCK_TRIALS, blockLoop, finish } from '../../sim/run/block-loop';
import type { BlockResult } from '../../sim/run/block-result';
import { GOOD } from '../../sim/run/grade';
import { type MethodPlan, methodPlan } from '../../sim/run/plan';
import { runMethod } from '../../sim/run/run-method';
import { settleWatch } from '../../sim/run/settled';
import { Moments } from '../../sim/statistics/moments';
import { normalCdf, normalQuantile } from '../../sim/statistics/normal-distribution';
import { quantileInterval } from '../../sim/statistics/quantiles';
import { wilson } from '../../sim/statistics/wilson';
import { projectWith } from '../support/projects';

const RUNS = 2000;
/** Small blocks make the runs cheap; the rule does not depend on their size. */
const RINGS_PER_BLOCK = 200;
/** Three standard errors of a share of 95 % in 2,000 runs: one false alarm in 370 for each figure. */
const LEAST = 0.935;
const MOST = 0.965;

interface Ring {
  biasDeg: number;
  sharedDeg: number;
  limitMm: number;
  /** Half-width asked for, as a part of the percentile and as a share of all rings. */
  relative: number;
}

interface Truth {
  p95: number;
  yield: number;
  mean: number;
}

interface Interval {
  low: number;
  high: number;
}

interface RunEnd {
  blocks: number;
  p95: Interval & { value: number };
  yield: Interval & { value: number };
  mean: Interval;
}

function projectOf({ biasDeg, sharedDeg, limitMm, relative }: Ring, trials = 100_000): Project {
  return projectWith({
    piece: { sides: 3 },
    limits: { showGapMm: limitMm, hiddenGapMm: 10, remedyGapMm: 10 },
    method: { tilt: { biasDeg, sharedDeg }, assembly: { ends: 'flush' } },
    run: { rule: 'touch', settle: { relative }, trials },
  });
}

/** The show gap is max(0, X) with X normal. */
function truthOf({ biasDeg, sharedDeg, limitMm }: Ring, jointLengthMm: number): Truth {
  const mmPerDeg = 2 * jointLengthMm * RADIANS_PER_DEGREE;
  const middle = -biasDeg * mmPerDeg;
  const sigma = sharedDeg * mmPerDeg;
  const density = Math.exp(-0.5 * (middle / sigma) ** 2) / Math.sqrt(2 * Math.PI);
  return {
    p95: middle + normalQuantile(0.95) * sigma,
    yield: normalCdf((limitMm - middle) / sigma),
    mean: middle * normalCdf(middle / sigma) + sigma * density,
  };
}

/** The product's loop and rule; it ends by nothing but being settled. */
function blocksUntilSettled(plan: MethodPlan, relative: number, seed: number, ringsPerBlock: number): BlockResult[] {
  const watch = settleWatch(relative);
  const loop = blockLoop({
    trials: Number.MAX_SAFE_INTEGER,
    run: (block) => blockSteps(plan, seed, block, ringsPerBlock),
    settled: (block) => watch.add(block),
  });
  const { blocks, stopReason } = finish(loop);
  expect(stopReason).toBe('settled');
  return blocks;
}

function runUntilSettled(plan: MethodPlan, relative: number, seed: number, ringsPerBlock = RINGS_PER_BLOCK): RunEnd {
  const blocks = blocksUntilSettled(plan, relative, seed, ringsPerBlock);
  const gaps = new Float64Array(blocks.length * ringsPerBlock);
  let good = 0;
  blocks.forEach((block, k) => {
    gaps.set(block.showGapMm, k * ringsPerBlock);
    for (const grade of block.grade) if (grade === GOOD) good++;
  });
  const { mean, standardError } = new Moments().add(gaps);
  const reach = normalQuantile(0.975) * standardError;
  return {
    blocks: blocks.length,
    p95: quantileInterval(gaps.sort(), 0.95),
    yield: wilson(good, gaps.length),
    mean: { low: mean - reach, high: mean + reach },
  };
}

const holds = ({ low, high }: Interval, truth: number): boolean => low <= truth && truth <= high;
const share = <Run>(runs: readonly Run[], that: (run: Run) => boolean): number =>
  runs.filter(that).length / runs.length;

describe.each<Ring & { drivenBy: string }>([
  { drivenBy: 'the percentile', biasDeg: 0, sharedDeg: 0.1, limitMm: 0.04, relative: 0.05 },
  { drivenBy: 'the yield', biasDeg: -0.5, sharedDeg: 0.02, limitMm: 0.634, relative: 0.02 },
])('runs settled by $drivenBy', (ring) => {
  const plan = methodPlan(projectOf(ring), 0, { sizes: false });
  const truth = truthOf(ring, plan.geometry.jointLengthMm);
  const runs = Array.from({ length: RUNS }, (_, seed) => runUntilSettled(plan, ring.relative, seed));

  test('go on after the first ten blocks as a rule, each as long as it needs', () => {
    expect(share(runs, ({ blocks }) => blocks > 10)).toBeGreaterThan(0.5);
    expect(new Set(runs.map(({ blocks }) => blocks)).size).toBeGreaterThan(10);
  });

  test.each(['p95', 'yield', 'mean'] as const)('hold the true %s in 95 % of their intervals', (figure) => {
    const coverage = share(runs, (run) => holds(run[figure], truth[figure]));
    expect(coverage).toBeGreaterThan(LEAST);
    expect(coverage).toBeLessThan(MOST);
  });

  test('are what a method’s own run does, whose blocks are larger', () => {
    // Asked for more closely, as its blocks hold twenty times as many rings.
    const closely = { ...ring, relative: ring.relative / Math.sqrt(20) };
    const counts = [1, 2, 3, 4, 5].map((seed) => {
      const { prediction } = finish(runMethod(projectOf(closely, 10_000_000), 0, { seed }));
      const expected = runUntilSettled(plan, closely.relative, seed, BLOCK_TRIALS);
      expect(prediction).toMatchObject({ stopReason: 'settled', trials: expected.blocks * BLOCK_TRIALS });
      expect(prediction.showGapMm.p95).toBeCloseTo(expected.p95.value, 12);
      expect(prediction.yield).toEqual(expected.yield);
      return expected.blocks;
    });
    expect(new Set(counts).size).toBeGreaterThan(1);
  });

  test('come as close as was asked in 95 % of all cases or more', () => {
    expect(share(runs, ({ p95 }) => Math.abs(p95.value - truth.p95) <= ring.relative * truth.p95)).toBeGreaterThan(
      LEAST,
    );
    expect(share(runs, (run) => Math.abs(run.yield.value - truth.yield) <= ring.relative)).toBeGreaterThan(LEAST);
  });

  test('would be found out if their intervals were a sixth too narrow', () => {
    const narrowed = ({ low, high }: Interval): Interval => {
      const cut = (high - low) / 12;
      return { low: low + cut, high: high - cut };
    };
    for (const figure of ['p95', 'yield', 'mean'] as const) {
      expect(share(runs, (run) => holds(narrowed(run[figure]), truth[figure]))).toBeLessThan(LEAST);
    }
  });
});
