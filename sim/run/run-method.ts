/** One method from document to result, block by block, at the pace of whoever drives the generator. */
import { pieceCost, setUpsFor } from '../decide/cost';
import type { Project } from '../project/document';
import { type BlockResult, runBlock } from './block';
import { blockLoop } from './block-loop';
import { mergeBlocks } from './merge';
import { methodPlan, type PlanOptions } from './plan';
import type { MethodResult, RunProgress } from './prediction';
import { settleWatch } from './settled';

export interface RunOptions extends PlanOptions {
  trials?: number;
  seed?: number;
  /** Asked after every block; what is done by then is kept. */
  shouldStop?: () => boolean;
}

/**
 * Yields after every block of rings, so that the driver can show progress, pause or ask for a stop; returns the result.
 * Same project, method, trials and seed give the same digits. `elapsedMs` is 0: the driver holds the clock.
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
    run: (block, rings) => runBlock(plan, seed, block, rings),
    ...(watch && { settled: (block: BlockResult) => watch.add(block) }),
    ...(options.shouldStop && { shouldStop: options.shouldStop }),
  });
  let step = loop.next();
  for (; !step.done; step = loop.next()) yield { method: methodIndex, ringsDone: step.value, ringsWanted: trials };
  const { blocks, stopReason } = step.value;
  // Whoever stops a run is waiting: a rough cost must do then.
  const setUps = setUpsFor(stopReason === 'cancelled' ? 0 : trials);
  return mergeBlocks(plan, blocks, stopReason, pieceCost(plan, seed, setUps));
}
