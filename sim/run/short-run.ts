/** A few thousand rings, for questions that ask the same thing of many variants of a method. */

import type { Project } from '../project/document';
import { NORMAL_975 } from '../statistics/normal-distribution';
import { runBlock } from './block';
import { BLOCK_TRIALS, blockCount, trialsInBlock } from './block-loop';
import { GOOD } from './grade';
import { methodPlan } from './plan';
import type { RunOptions } from './run-method';

export interface ShortRun {
  trials: number;
  /** In the order of the rings, so that variants can be compared ring by ring. */
  showGapMm: Float64Array;
  hiddenGapMm: Float64Array;
  good: Uint8Array;
  /** Share of good rings. */
  yield: number;
}

/** The same seed draws the same rings for every variant. Sizes are followed only where an insert must fit. */
export function shortRun(project: Project, methodIndex: number, trials: number, options: RunOptions = {}): ShortRun {
  const plan = methodPlan(project, methodIndex, { ...options, sizes: false });
  const seed = options.seed ?? project.run.seed;
  const showGapMm = new Float64Array(trials);
  const hiddenGapMm = new Float64Array(trials);
  const good = new Uint8Array(trials);
  let count = 0;
  for (let block = 0; block < blockCount(trials); block++) {
    const result = runBlock(plan, seed, block, trialsInBlock(trials, block));
    const at = block * BLOCK_TRIALS;
    showGapMm.set(result.showGapMm, at);
    hiddenGapMm.set(result.hiddenGapMm, at);
    result.grade.forEach((grade, k) => {
      if (grade !== GOOD) return;
      good[at + k] = 1;
      count++;
    });
  }
  return { trials, showGapMm, hiddenGapMm, good, yield: count / trials };
}

/** Difference of two shares of good rings on the same random numbers, first less second, with its 95 % interval. */
export function pairedYield(first: ShortRun, second: ShortRun): { value: number; low: number; high: number } {
  let [onlyFirst, onlySecond] = [0, 0];
  for (let k = 0; k < first.trials; k++) {
    if (first.good[k]! > second.good[k]!) onlyFirst++;
    else if (first.good[k]! < second.good[k]!) onlySecond++;
  }
  const n = first.trials;
  const value = (onlyFirst - onlySecond) / n;
  const reach = NORMAL_975 * Math.sqrt(Math.max(0, (onlyFirst + onlySecond) / n - value * value) / n);
  return { value, low: value - reach, high: value + reach };
}
