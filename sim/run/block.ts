/** One block of simulated rings: what a worker is asked for and what it gives back. */

import { finish } from './block-loop';
import { drawRings } from './draw-rings';
import { GAP_BINS } from './gap-histogram';
import { type GradeRing, gradeInto } from './grade';
import type { MethodPlan } from './plan';

/** Flat arrays only, so that a worker can hand it over without copying. One number a ring unless it says otherwise. */
export interface BlockResult {
  block: number;
  rings: number;
  mouthMm: Float64Array;
  showGapMm: Float64Array;
  hiddenGapMm: Float64Array;
  /** Twice the smallest clear half-opening; empty when sizes are not followed. */
  clearOpeningMm: Float64Array;
  outOfRoundMm: Float64Array;
  /** How far a stave steps out past its neighbour at most; empty when sizes are not followed. */
  stepMm: Float64Array;
  /** Only for two halves: wood that truing takes off an end face. */
  truingMm: Float64Array;
  /** Tilt setting error after the test cuts, radians; empty without test cuts. */
  tiltRad: Float64Array;
  grade: Uint8Array;
  closes: Uint8Array;
  insertFits: Uint8Array;
  /** All but the show limit is met. */
  otherwiseGood: Uint8Array;
  rounds: Uint8Array;
  recuts: Uint8Array;
  /** Show gaps of every joint: N × GAP_BINS counts, or GAP_BINS of all joints together when they are not asked for. */
  jointGaps: Uint32Array;
}

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
  const result = emptyResult(plan, block, rings, plan.maps.sides * GAP_BINS);
  yield* drawRings(plan, seed, block, rings, result, gradeInto(plan, result));
  return result;
}

function emptyResult(plan: MethodPlan, block: number, rings: number, gapCounts: number): BlockResult {
  const sizes = plan.sizes ? rings : 0;
  return {
    block,
    rings,
    mouthMm: new Float64Array(rings),
    showGapMm: new Float64Array(rings),
    hiddenGapMm: new Float64Array(rings),
    clearOpeningMm: new Float64Array(sizes),
    outOfRoundMm: new Float64Array(sizes),
    stepMm: new Float64Array(sizes),
    truingMm: new Float64Array(plan.method.assembly.by === 'twoHalves' ? rings : 0),
    tiltRad: new Float64Array(plan.test ? rings : 0),
    grade: new Uint8Array(rings),
    closes: new Uint8Array(rings),
    insertFits: new Uint8Array(rings),
    otherwiseGood: new Uint8Array(rings),
    rounds: new Uint8Array(rings),
    recuts: new Uint8Array(rings),
    jointGaps: new Uint32Array(gapCounts),
  };
}

export interface RingGrading {
  result: BlockResult;
  grade: GradeRing;
}

/** Grades rings that are not part of a block's run, into a result of its own with room for `rings`; does not tell the gaps joint by joint. */
export function ringGrading(plan: MethodPlan, rings: number): RingGrading {
  const result = emptyResult(plan, 0, rings, GAP_BINS);
  return { result, grade: gradeInto(plan, result) };
}
