/** The loop every simulation runs in: exact trials, why it ended, and what a stop keeps. */
import { describe, expect, test } from 'vitest';
import { atOnce, BLOCK_TRIALS, blockCount, blockLoop, finish, trialsInBlock } from '../../../sim/run/block-loop';

const run = atOnce((block: number, trials: number) => ({ block, trials }));

describe('a run of a given number of trials', () => {
  test.each([1, 99, BLOCK_TRIALS - 1, BLOCK_TRIALS, BLOCK_TRIALS + 1, 5 * BLOCK_TRIALS, 12_345])(
    'does exactly %i',
    (trials) => {
      const { blocks, stopReason } = finish(blockLoop({ trials, run }));
      expect(blocks.reduce((sum, block) => sum + block.trials, 0)).toBe(trials);
      expect(blocks.map(({ block }) => block)).toEqual(Array.from({ length: blockCount(trials) }, (_, k) => k));
      expect(blocks.slice(0, -1).every((block) => block.trials === BLOCK_TRIALS)).toBe(true);
      expect(stopReason).toBe('trial-limit');
    },
  );

  test('has nothing in the blocks beyond its last', () => {
    expect([0, 1, 2, 3].map((block) => trialsInBlock(BLOCK_TRIALS + 7, block))).toEqual([BLOCK_TRIALS, 7, 0, 0]);
  });

  test('tells after every block how many trials are done', () => {
    expect([...blockLoop({ trials: 2 * BLOCK_TRIALS + 5, run })]).toEqual([
      BLOCK_TRIALS,
      2 * BLOCK_TRIALS,
      2 * BLOCK_TRIALS + 5,
    ]);
  });
});

describe('a run that is stopped', () => {
  test('keeps the blocks that are done and says that it was cancelled', () => {
    let asked = 0;
    const { blocks, stopReason } = finish(
      blockLoop({ trials: 10 * BLOCK_TRIALS, run, shouldStop: () => ++asked === 3 }),
    );
    expect(blocks.map(({ block }) => block)).toEqual([0, 1, 2]);
    expect(stopReason).toBe('cancelled');
  });

  test('with its last block is simply done', () => {
    const { blocks, stopReason } = finish(blockLoop({ trials: 2 * BLOCK_TRIALS, run, shouldStop: () => false }));
    expect([blocks.length, stopReason]).toEqual([2, 'trial-limit']);
    const late = finish(blockLoop({ trials: BLOCK_TRIALS, run, shouldStop: () => true }));
    expect([late.blocks.length, late.stopReason]).toEqual([1, 'trial-limit']);
  });
});

describe('a block that is made in steps', () => {
  function* inSteps(block: number): Generator<void, number, void> {
    yield;
    yield;
    return block;
  }

  test('pauses the run between them, with the whole blocks told', () => {
    expect([...blockLoop({ trials: BLOCK_TRIALS + 5, run: inSteps })]).toEqual([
      0,
      0,
      BLOCK_TRIALS,
      BLOCK_TRIALS,
      BLOCK_TRIALS,
      BLOCK_TRIALS + 5,
    ]);
  });

  test('is given up when the run is stopped, unless it is the first', () => {
    const stopped = (after: number) => {
      let steps = 0;
      const loop = blockLoop({ trials: 10 * BLOCK_TRIALS, run: inSteps, shouldStop: () => steps >= after });
      for (let step = loop.next(); ; step = loop.next()) {
        if (step.done) return step.value;
        steps++;
      }
    };
    expect(stopped(1)).toEqual({ blocks: [0], stopReason: 'cancelled' });
    expect(stopped(5)).toEqual({ blocks: [0], stopReason: 'cancelled' });
    expect(stopped(6)).toEqual({ blocks: [0, 1], stopReason: 'cancelled' });
  });
});

describe('a run that settles', () => {
  test('sees the blocks in order and ends as soon as the answer is settled', () => {
    const seen: number[] = [];
    const { blocks, stopReason } = finish(
      blockLoop({
        trials: 10 * BLOCK_TRIALS,
        run,
        settled: ({ block }) => {
          seen.push(block);
          return block === 4;
        },
      }),
    );
    expect(seen).toEqual([0, 1, 2, 3, 4]);
    expect([blocks.length, stopReason]).toEqual([5, 'settled']);
  });

  test('and is stopped at once counts as settled', () => {
    const { stopReason } = finish(
      blockLoop({ trials: 3 * BLOCK_TRIALS, run, settled: () => true, shouldStop: () => true }),
    );
    expect(stopReason).toBe('settled');
  });
});
