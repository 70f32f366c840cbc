/** One block of simulated rings: what a worker is asked for and what it gives back. */

import { finish } from './block-loop';
import { type BlockResult, emptyResult } from './block-result';
import { BATCH_RINGS, drawRings } from './draw-rings';
import { type GradeRing, gradeInto } from './grade';
import { everyGap, keepEvery, lookHigher, noGaps, widestGaps } from './joint-gaps';
import type { MethodPlan } from './plan';

/** `blockSteps` in one go. */
export function runBlock(plan: MethodPlan, seed: number, block: number, rings: number): BlockResult {
  return finish(blockSteps(plan, seed, block, rings));
}

/** Simulates `rings` rings of one block, yielding after every few. The same plan, seed and block give the same bits. */
export function* blockSteps(
  plan: MethodPlan,
  seed: number,
  block: number,
  rings: number,
): Generator<void, BlockResult, void> {
  const result = emptyResult(plan, block, rings);
  const gaps = everyGap(plan.maps.sides, rings);
  const grade = gradeInto(plan, result, gaps);
  const drawing = drawRings(plan, seed, block, rings, result, grade);
  let drawn = drawing.next();
  lookHigher(gaps, Math.min(rings, BATCH_RINGS), rings);
  for (; !drawn.done; drawn = drawing.next()) yield;
  if (keepEvery(gaps, rings)) yield* drawRings(plan, seed, block, rings, result, grade);
  return { ...result, jointGapsMm: widestGaps(gaps), jointGapCounts: gaps.counts };
}

export interface RingGrading {
  result: BlockResult;
  grade: GradeRing;
}

/** Grades rings that are not part of a block's run, into a result of its own with room for `rings`; does not tell the gaps joint by joint. */
export function ringGrading(plan: MethodPlan, rings: number): RingGrading {
  const result = emptyResult(plan, 0, rings);
  return { result, grade: gradeInto(plan, result, noGaps(plan.maps.sides)) };
}
