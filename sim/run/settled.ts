/** Watches a run block by block and says when its answer is settled, by the two-stage rule of `statistics/settle`. */

import { selectQuantile } from '../statistics/quantiles';
import { FIRST_STAGE_BLOCKS, settling } from '../statistics/settle';
import type { BlockResult } from './block-result';
import { GOOD } from './grade';

/** Below this the eye cannot tell percentiles apart, so nothing finer is waited for, mm. */
const FINEST_MM = 0.0005;

export interface SettleWatch {
  /** Takes the next block, in order; true once the 95th percentile show gap and the yield are settled. */
  add(block: BlockResult): boolean;
}

/** `relative`: wanted half-width of the 95 % interval, as a part of the 95th percentile and as a share of all rings. */
export function settleWatch(relative: number): SettleWatch {
  const p95: number[] = [];
  const yields: number[] = [];
  return {
    add(block) {
      p95.push(selectQuantile(block.showGapMm, 0.95));
      let good = 0;
      for (const grade of block.grade) if (grade === GOOD) good++;
      yields.push(good / block.rings);
      if (p95.length < FIRST_STAGE_BLOCKS) return false;
      const first = p95.slice(0, FIRST_STAGE_BLOCKS);
      const level = first.reduce((sum, v) => sum + v, 0) / FIRST_STAGE_BLOCKS;
      return (
        settling(p95, Math.max(FINEST_MM, relative * level)).settled &&
        settling(yields, Math.max(relative, 1e-4)).settled
      );
    },
  };
}
