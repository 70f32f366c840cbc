import { Moments } from './moments';
import { studentQuantile } from './student';

/** Blocks after which the spread of the block figures is taken, once and for all. */
export const FIRST_STAGE_BLOCKS = 10;

export interface Settling {
  settled: boolean;
  /** Blocks the run needs in all, as far as is known now; after the first stage it does not change any more. */
  blocksWanted: number;
}

/**
 * Tells whether the mean of a figure over equal blocks of trials is known to within ± `halfWidth` at the given level.
 *
 * A rule that looks again after every block stops when the spread happens to look small, and so claims too much. Here
 * the spread s is taken from the first ten blocks alone; it fixes h = max(10, ⌊s²t²/δ²⌋ + 1), with t Student's quantile
 * for nine degrees of freedom, and the figure is settled when h blocks are in, not sooner.
 *
 * @param blockFigures one number a block, in block order, such as each block's 95th percentile
 * @param halfWidth tolerance δ, above 0, in the unit of the figures
 * @param level confidence level, between 0 and 1
 * @throws RangeError if the tolerance is not above 0 or the level not between 0 and 1
 *
 * Source: C. Stein, Ann. Math. Statist. 16 (1945) 243–258; G. Wübbeler, P. M. Harris, M. G. Cox and C. Elster, "A
 * two-stage procedure for determining the number of trials in the application of a Monte Carlo method for uncertainty
 * evaluation", Metrologia 47 (2010) 317–324. It takes the place of the adaptive procedure of JCGM 101:2008, 7.9.
 */
export function settling(blockFigures: ArrayLike<number>, halfWidth: number, level = 0.95): Settling {
  if (!(halfWidth > 0)) {
    throw new RangeError(`Settling tolerance ${halfWidth} is not above 0. Give the error that may remain.`);
  }
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`Confidence level ${level} is not between 0 and 1. Give one such as 0.95.`);
  }
  const blocks = blockFigures.length;
  if (blocks < FIRST_STAGE_BLOCKS) return { settled: false, blocksWanted: FIRST_STAGE_BLOCKS };
  const { variance } = new Moments().add(blockFigures, 0, FIRST_STAGE_BLOCKS);
  const t = studentQuantile((1 + level) / 2, FIRST_STAGE_BLOCKS - 1);
  const needed = Math.floor((variance * t * t) / (halfWidth * halfWidth)) + 1;
  const blocksWanted = Math.max(FIRST_STAGE_BLOCKS, needed);
  return { settled: blocks >= blocksWanted, blocksWanted };
}
