/** The error budget of one method: each source's share of the variance, and the 95th percentile gap were it perfect. */
import { activeSources } from '../errors/sources';
import { RADIANS_PER_DEGREE } from '../geometry/ring';
import { type Project, SOURCE_NAMES } from '../project/document';
import { runBlock } from '../run/block';
import { blockLoop, finish } from '../run/block-loop';
import { type MethodPlan, methodPlan } from '../run/plan';
import type { BudgetLine } from '../run/prediction';
import type { RunOptions } from '../run/run-method';
import { Moments } from '../statistics/moments';
import { selectQuantile } from '../statistics/quantiles';
import { openingVariances } from './variance-shares';

export const BUDGET_TRIALS = 20_000;

export interface BudgetProgress {
  sourcesDone: number;
  sourcesWanted: number;
}

interface ShortRun {
  showGapP95Mm: number;
  tiltSdDeg?: number;
}

function shortRun(plan: MethodPlan, seed: number, trials: number): ShortRun {
  const loop = blockLoop({ trials, run: (block, rings) => runBlock(plan, seed, block, rings) });
  const { blocks } = finish(loop);
  const gaps = new Float64Array(trials);
  const tilt = new Moments();
  let at = 0;
  for (const block of blocks) {
    gaps.set(block.showGapMm, at);
    at += block.rings;
    if (plan.test) tilt.add(block.tiltRad);
  }
  return {
    showGapP95Mm: selectQuantile(gaps, 0.95),
    ...(plan.test && { tiltSdDeg: tilt.sd / RADIANS_PER_DEGREE }),
  };
}

/**
 * One line per source that does anything, in the order of the tables; the shares add up to 1. Every run uses the same
 * random numbers, so lines differ by the source alone. Yields after every source; a wanted stop leaves the rest out.
 */
export function* sourceBudget(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
): Generator<BudgetProgress, BudgetLine[], void> {
  const trials = options.trials ?? BUDGET_TRIALS;
  const seed = options.seed ?? project.run.seed;
  const plan = methodPlan(project, methodIndex, { ...options, sizes: false });
  const active = activeSources(plan.list);
  const sources = SOURCE_NAMES.filter((name) => active.has(name));
  const tiltSdDeg = plan.test ? shortRun(plan, seed, trials).tiltSdDeg : undefined;
  const variances = openingVariances(plan, tiltSdDeg);
  let total = 0;
  for (const variance of variances.values()) total += variance;
  const lines: BudgetLine[] = [];
  for (const source of sources) {
    const without = methodPlan(project, methodIndex, { ...options, sizes: false, perfect: new Set([source]) });
    lines.push({
      source,
      varianceShare: total > 0 ? (variances.get(source) ?? 0) / total : 0,
      showGapP95WithoutMm: shortRun(without, seed, trials).showGapP95Mm,
    });
    yield { sourcesDone: lines.length, sourcesWanted: sources.length };
    if (options.shouldStop?.()) break;
  }
  return lines;
}
