/** One method from document to result, block by block, at the pace of whoever drives the generator. */

import type { Project } from '../project/document';
import { blockSteps } from './block';
import { blockLoop } from './block-loop';
import type { BlockResult } from './block-result';
import { pieceCostSteps, setUpsFor } from './cost';
import { mergeSteps } from './merge';
import { methodPlan, type PlanOptions } from './plan';
import type { MethodResult, RunProgress } from './prediction';
import { settleWatch } from './settled';

export interface RunOptions extends PlanOptions {
  trials?: number;
  seed?: number;
  /** Set-ups that are costed; left out: as many as go with the rings. */
  setUps?: number;
  /** Asked after every few rings and every set-up; what is done by then is kept, a block of rings in any case. */
  shouldStop?: () => boolean;
}

/**
 * Yields after every few rings and every set-up costed, and while summing up, so that the driver can show progress, pause or ask for a stop; returns the result.
 * Same project, method, trials and seed give the same digits.
 */
export function* runMethod(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
): Generator<RunProgress, MethodResult, void> {
  const trials = options.trials ?? project.run.trials;
  const seed = options.seed ?? project.run.seed;
  const plan = methodPlan(project, methodIndex, options);
  const watch = project.run.settle && settleWatch(project.run.settle.relative);
  const loop = blockLoop({
    trials,
    run: (block, rings) => blockSteps(plan, seed, block, rings),
    ...(watch && { settled: (block: BlockResult) => watch.add(block) }),
    ...(options.shouldStop && { shouldStop: options.shouldStop }),
  });
  let ringsDone = 0;
  const progress = () => ({ method: methodIndex, ringsDone, ringsWanted: trials });
  let step = loop.next();
  for (; !step.done; step = loop.next()) {
    ringsDone = step.value;
    yield progress();
  }
  const { blocks, stopReason } = step.value;
  const shouldStop = () => stopReason === 'cancelled' || options.shouldStop?.() === true;
  const costing = pieceCostSteps(plan, seed, options.setUps ?? setUpsFor(trials), shouldStop);
  let costed = costing.next();
  for (; !costed.done; costed = costing.next()) yield progress();
  const merging = mergeSteps(plan, blocks, stopReason, costed.value);
  let merged = merging.next();
  for (; !merged.done; merged = merging.next()) yield progress();
  return merged.value;
}
