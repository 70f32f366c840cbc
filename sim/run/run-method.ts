/** One method from document to result, block by block, at the pace of whoever drives the generator. */
import { pieceCost, setUpsFor } from '../decide/cost';
import type { Project } from '../project/document';
import { BLOCK_RINGS, type BlockResult, ringsInBlock, runBlock } from './block';
import { mergeBlocks } from './merge';
import { methodPlan, type PlanOptions } from './plan';
import type { MethodResult, RunProgress, StopReason } from './prediction';
import { settleWatch } from './settled';

export interface RunOptions extends PlanOptions {
  trials?: number;
  seed?: number;
  /** Asked after every block; what is done by then is kept. */
  shouldStop?: () => boolean;
}

export function blockCount(trials: number): number {
  return Math.ceil(trials / BLOCK_RINGS);
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
  const blocks: BlockResult[] = [];
  let ringsDone = 0;
  let stopReason: StopReason = 'trial-limit';
  for (let block = 0; block < blockCount(trials); block++) {
    const rings = ringsInBlock(trials, block);
    const result = runBlock(plan, seed, block, rings);
    blocks.push(result);
    ringsDone += rings;
    yield { method: methodIndex, ringsDone, ringsWanted: trials };
    if (options.shouldStop?.()) {
      stopReason = ringsDone < trials ? 'cancelled' : stopReason;
      break;
    }
    if (watch?.add(result)) {
      stopReason = 'settled';
      break;
    }
  }
  return mergeBlocks(plan, blocks, stopReason, pieceCost(plan, seed, setUpsFor(trials)));
}

/** Runs a generator to its end and gives what it returns. */
export function finish<Result>(run: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}
