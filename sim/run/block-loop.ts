/**
 * The block loop every simulation runs in: a block of trials, a word on progress, a look at whether the answer is
 * settled or a stop is wanted. Blocks depend only on their index, so they may also be made elsewhere and in any order.
 */
import type { StopReason } from './prediction';

/** Trials a block; the last block of a run may hold fewer. */
export const BLOCK_TRIALS = 4000;

export function blockCount(trials: number): number {
  return Math.ceil(trials / BLOCK_TRIALS);
}

export function trialsInBlock(trials: number, block: number): number {
  return Math.max(0, Math.min(BLOCK_TRIALS, trials - block * BLOCK_TRIALS));
}

export interface BlockLoop<Block> {
  trials: number;
  /** Makes one block, yielding every few trials. */
  run(block: number, trials: number): Generator<void, Block, void>;
  /** Takes the blocks in order; true once the answer is settled. */
  settled?: (block: Block) => boolean;
  /** Asked after every few trials; the whole blocks done by then are kept, the first in any case. */
  shouldStop?: () => boolean;
}

/** For a loop whose blocks are each made in one go. */
export function atOnce<Block>(
  make: (block: number, trials: number) => Block,
): (block: number, trials: number) => Generator<void, Block, void> {
  // biome-ignore lint/correctness/useYield: there is nothing to pause for.
  return function* (block, trials) {
    return make(block, trials);
  };
}

export interface BlocksDone<Block> {
  blocks: Block[];
  stopReason: StopReason;
}

/** Yields the trials of the blocks done, after every few trials; returns the blocks in order and why the loop ended. */
export function* blockLoop<Block>(loop: BlockLoop<Block>): Generator<number, BlocksDone<Block>, void> {
  const blocks: Block[] = [];
  let done = 0;
  for (let block = 0; block < blockCount(loop.trials); block++) {
    const trials = trialsInBlock(loop.trials, block);
    const making = loop.run(block, trials);
    let made = making.next();
    for (; !made.done; made = making.next()) {
      yield done;
      if (block > 0 && loop.shouldStop?.()) return { blocks, stopReason: 'cancelled' };
    }
    blocks.push(made.value);
    done += trials;
    yield done;
    if (loop.settled?.(made.value)) return { blocks, stopReason: 'settled' };
    if (done < loop.trials && loop.shouldStop?.()) return { blocks, stopReason: 'cancelled' };
  }
  return { blocks, stopReason: 'trial-limit' };
}

/** Runs a generator to its end and gives what it returns. */
export function finish<Result>(run: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}
