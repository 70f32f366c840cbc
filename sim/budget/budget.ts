/** The error budget of one method: each source's share of the variance, and the 95th percentile gap were it perfect. */
import { activeSources } from '../errors/sources';
import { type Project, SOURCE_NAMES, type SourceName } from '../project/document';
import { runBlock } from '../run/block';
import { BLOCK_TRIALS, blockCount, trialsInBlock } from '../run/block-loop';
import { setUps } from '../run/draw-rings';
import { type MethodPlan, methodPlan } from '../run/plan';
import type { BudgetLine } from '../run/prediction';
import type { RunOptions } from '../run/run-method';
import { Moments } from '../statistics/moments';
import { type Difference, pairedQuantile } from '../statistics/paired';
import { selectQuantile } from '../statistics/quantiles';
import { openingVariances } from './variance-shares';

export const BUDGET_TRIALS = 20_000;

/** One run of the budget, with all sources or without one of them; ring k is the same luck in each. */
export interface BudgetRun {
  /** Worst gap on the show side(s), mm, ring by ring. */
  showGapMm: Float64Array;
}

export interface SourceEffect extends BudgetLine {
  /** 95th percentile show gap without the source less that with all; below 0 where the source widens the gap. */
  showGapP95ChangeMm: Difference;
}

export interface SourceBudget {
  trials: number;
  /** 95th percentile show gap with all sources. */
  showGapP95Mm: number;
  /** One line per source that does anything, in the order of the tables; the shares add up to 1. */
  sources: SourceEffect[];
}

function budgetPlan(project: Project, methodIndex: number, options: RunOptions): MethodPlan {
  return methodPlan(project, methodIndex, { ...options, sizes: false });
}

/** The sources that a method's budget has a line for. */
export function budgetSources(project: Project, methodIndex: number): SourceName[] {
  const active = activeSources(budgetPlan(project, methodIndex, {}).list);
  return SOURCE_NAMES.filter((name) => active.has(name));
}

/** Rings with `without` perfect, or with every source as it is. All runs use the same random numbers. */
export function budgetRun(
  project: Project,
  methodIndex: number,
  without: SourceName | undefined,
  options: RunOptions = {},
): BudgetRun {
  const trials = options.trials ?? BUDGET_TRIALS;
  const seed = options.seed ?? project.run.seed;
  const perfect = without === undefined ? {} : { perfect: new Set([without]) };
  const plan = budgetPlan(project, methodIndex, { ...options, ...perfect });
  const showGapMm = new Float64Array(trials);
  for (let block = 0; block < blockCount(trials); block++) {
    const result = runBlock(plan, seed, block, trialsInBlock(trials, block));
    showGapMm.set(result.showGapMm, block * BLOCK_TRIALS);
  }
  return { showGapMm };
}

/** Spread of what the test cuts leave of the setting, read by a test piece without errors of its own, degrees. */
function leftOverDeg(plan: MethodPlan, seed: number): number {
  if (!plan.test) return 0;
  const { width, readingAt } = plan.matrix;
  const shared = setUps(plan, seed, 0, new Uint8Array(BLOCK_TRIALS));
  const readings = Float64Array.from({ length: BLOCK_TRIALS }, (_, k) => shared[k * width + readingAt]!);
  return new Moments().add(readings).sd / Math.abs(plan.test.mmPerDeg);
}

/** The budget from its runs: with all sources, and without each of some. */
export function budgetOf(
  project: Project,
  methodIndex: number,
  all: BudgetRun,
  without: ReadonlyMap<SourceName, BudgetRun>,
): SourceBudget {
  const plan = budgetPlan(project, methodIndex, {});
  const variances = openingVariances(plan, leftOverDeg(plan, project.run.seed));
  let total = 0;
  for (const variance of variances.values()) total += variance;
  const trials = all.showGapMm.length;
  return {
    trials,
    showGapP95Mm: selectQuantile(all.showGapMm, 0.95),
    sources: [...without].map(([source, { showGapMm }]) => ({
      source,
      varianceShare: total > 0 ? (variances.get(source) ?? 0) / total : 0,
      showGapP95WithoutMm: selectQuantile(showGapMm, 0.95),
      showGapP95ChangeMm: pairedQuantile(showGapMm, all.showGapMm, trials, 0.95),
    })),
  };
}

/** The lines that a prediction carries. */
export function budgetLines({ sources }: SourceBudget): BudgetLine[] {
  return sources.map(({ source, varianceShare, showGapP95WithoutMm }) => {
    return { source, varianceShare, showGapP95WithoutMm };
  });
}
