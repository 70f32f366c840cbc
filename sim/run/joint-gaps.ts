/**
 * The 95th percentile gap of every joint, exactly, without keeping every gap of every joint: a block hands over only the
 * widest of each, far more of them than can belong to the widest twentieth of all.
 */
import { COUNTED_OVER_MM } from '../geometry/thresholds';
import { quantileOfLargest, selectQuantile } from '../statistics/quantiles';
import type { BlockResult } from './block-result';

const SHARE = 0.95;
/** With so many standard deviations of room, what chance leaves out is not worth a word: under 1 in 10^11 a block. */
const ROOM = 9;
/** By so many the limit set after the first rings is set lower than they say; a block that it misleads is drawn again. */
const LIMIT_ROOM = 4;
/** Fewer rings than these are all handed over. */
const WORTH_A_LIMIT = 1000;

/** How many of `rings` gaps, at most, are among the widest twentieth of all rings: blocks differ by chance alone. */
function mostAmongWidest(rings: number, room: number): number {
  const expected = (1 - SHARE) * rings;
  return Math.min(rings, Math.ceil(expected + room * Math.sqrt(expected * SHARE)) + 2);
}

/** The gaps of a block, joint by joint, that are above 0 and not below a limit of their own. */
export interface JointGaps {
  /** Gaps of joint j begin at j × `stride`. */
  gapsMm: Float64Array;
  stride: number;
  counts: Uint32Array;
  /** Those not below it are kept, mm. */
  leastMm: Float64Array;
  /** What every gap of a ring that will not close counts at least, mm. */
  countedOverMm: number;
}

/** The room of the block before, which the next may use: to make it anew costs a tenth of a quick run. */
let spare: Float64Array = new Float64Array(0);

/** Room for `rings` gaps of each joint, all of which above 0 are kept until `lookHigher`. */
export function everyGap(sides: number, rings: number): JointGaps {
  const gapsMm = spare.length >= sides * rings ? spare : new Float64Array(sides * rings);
  spare = new Float64Array(0);
  return {
    gapsMm,
    stride: rings,
    counts: new Uint32Array(sides),
    leastMm: new Float64Array(sides).fill(Number.MIN_VALUE),
    countedOverMm: COUNTED_OVER_MM,
  };
}

/** For rings that are not asked for their joints. */
export function noGaps(sides: number): JointGaps {
  return {
    gapsMm: new Float64Array(1),
    stride: 0,
    counts: new Uint32Array(sides),
    leastMm: new Float64Array(sides).fill(Number.POSITIVE_INFINITY),
    // For percentiles alone: the jump would swamp what a source does to a variance.
    countedOverMm: 0,
  };
}

/** After the first `seen` of `rings` rings: sets the limits so that all that can matter are still kept. */
export function lookHigher({ gapsMm, stride, counts, leastMm }: JointGaps, seen: number, rings: number): void {
  if (rings < WORTH_A_LIMIT) return;
  const share = mostAmongWidest(rings, ROOM) / rings;
  const wide = Math.ceil(seen * share + LIMIT_ROOM * Math.sqrt(seen * share * (1 - share)));
  for (let joint = 0; joint < counts.length; joint++) {
    const first = gapsMm.subarray(joint * stride, joint * stride + counts[joint]!);
    if (first.length <= wide) continue;
    const least = selectQuantile(first, 1 - wide / first.length);
    let kept = 0;
    for (let k = 0; k < first.length; k++) if (first[k]! >= least) first[kept++] = first[k]!;
    leastMm[joint] = least;
    counts[joint] = kept;
  }
}

/** Begins anew with every gap above 0 kept, where too few were; says whether it did. */
export function keepEvery({ counts, leastMm }: JointGaps, rings: number): boolean {
  const needed = mostAmongWidest(rings, ROOM);
  if (counts.every((count, joint) => count >= needed || leastMm[joint] === Number.MIN_VALUE)) return false;
  counts.fill(0);
  leastMm.fill(Number.MIN_VALUE);
  return true;
}

/** What was kept, closed up: joint after joint as many as `counts` says. The room is given back. */
export function widestGaps({ gapsMm, stride, counts }: JointGaps): Float64Array {
  const widest = new Float64Array(counts.reduce((sum, count) => sum + count, 0));
  let at = 0;
  counts.forEach((count, joint) => {
    widest.set(gapsMm.subarray(joint * stride, joint * stride + count), at);
    at += count;
  });
  spare = gapsMm;
  return widest;
}

/** The gap that 95 of 100 rings stay under, joint by joint, mm. */
export function jointP95Mm(blocks: readonly BlockResult[], sides: number): number[] {
  const rings = blocks.reduce((sum, block) => sum + block.rings, 0);
  const begin = blocks.map(() => 0);
  return Array.from({ length: sides }, (_, joint) => {
    const parts = blocks.map(({ jointGapsMm, jointGapCounts }, k) => {
      const from = begin[k]!;
      begin[k] = from + jointGapCounts[joint]!;
      return jointGapsMm.subarray(from, begin[k]);
    });
    const count = parts.reduce((sum, { length }) => sum + length, 0);
    // Zeros are not handed over; as many as could decide stand for them.
    const widest = new Float64Array(Math.max(count, Math.min(rings, Math.ceil((1 - SHARE) * rings) + 2)));
    let at = 0;
    for (const part of parts) {
      widest.set(part, at);
      at += part.length;
    }
    return quantileOfLargest(widest, rings, SHARE);
  });
}
