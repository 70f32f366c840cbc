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

/** The blocks of a run, taken in their order wherever they were made, and when they are enough. */
export class TakenBlocks<Block> {
  readonly blocks: Block[] = [];
  trialsDone = 0;
  /** null while more are wanted. */
  end: 'settled' | 'trial-limit' | null = null;
  readonly #loop: Pick<BlockLoop<Block>, 'trials' | 'settled'>;

  constructor(loop: Pick<BlockLoop<Block>, 'trials' | 'settled'>) {
    this.#loop = loop;
    if (loop.trials === 0) this.end = 'trial-limit';
  }

  take(block: Block): void {
    const { trials, settled } = this.#loop;
    this.trialsDone += trialsInBlock(trials, this.blocks.length);
    this.blocks.push(block);
    if (settled?.(block)) this.end = 'settled';
    else if (this.trialsDone === trials) this.end = 'trial-limit';
  }
}

/** Yields the trials of the blocks done, after every few trials; returns the blocks in order and why the loop ended. */
export function* blockLoop<Block>(loop: BlockLoop<Block>): Generator<number, BlocksDone<Block>, void> {
  const taken = new TakenBlocks(loop);
  const { blocks } = taken;
  while (taken.end === null) {
    const making = loop.run(blocks.length, trialsInBlock(loop.trials, blocks.length));
    let made = making.next();
    for (; !made.done; made = making.next()) {
      yield taken.trialsDone;
      if (blocks.length > 0 && loop.shouldStop?.()) return { blocks, stopReason: 'cancelled' };
    }
    taken.take(made.value);
    yield taken.trialsDone;
    if (taken.end === null && loop.shouldStop?.()) return { blocks, stopReason: 'cancelled' };
  }
  return { blocks, stopReason: taken.end };
}

/** Runs a generator to its end and gives what it returns. */
export function finish<Result>(run: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}
