/** One block of simulated rings: what a worker is asked for and what it gives back. */

import { runTestCuts } from '../decide/test-cuts';
import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import { GAP_BINS } from './gap-histogram';
import { type GradeRing, gradeInto } from './grade';
import { openRows } from './joint-rows';
import type { MethodPlan } from './plan';

/** Rings drawn at once, few enough to stay in the processor's nearest memory. */
const BATCH_RINGS = 64;

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
  /** Largest step between neighbouring staves, up the edge or through the thickness; empty when sizes are not followed. */
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
  /** Show gaps of every joint: N × GAP_BINS counts. */
  jointGaps: Uint32Array;
}

/** Simulates `rings` rings of one block. The same plan, seed and block give the same bits. */
export function runBlock(plan: MethodPlan, seed: number, block: number, rings: number): BlockResult {
  const result = emptyResult(plan, block, rings);
  const piece = pourPieces(plan, seed, block, result.rounds);
  const rows = openRows(plan.list, plan.engine, seed, block, 'piece', BATCH_RINGS);
  const halves = plan.method.assembly.by === 'twoHalves';
  const corners = new Float64Array(halves ? 8 * BATCH_RINGS : 0);
  const truing = stream(seed, 'piece truing', block);
  const grade = gradeInto(plan, result);
  const outputs = new Float64Array(BATCH_RINGS * plan.matrix.width);
  for (let from = 0; from < rings; from += BATCH_RINGS) {
    const count = Math.min(BATCH_RINGS, rings - from);
    outputs.fill(0);
    piece(outputs, from, count);
    rows.pour(count);
    result.recuts.set(rows.recuts.subarray(0, count), from);
    if (halves) {
      fillNormals(truing, corners, 0, 8 * count);
      for (let k = 0; k < 8 * count; k++) corners[k]! *= plan.list.truingMm;
    }
    for (let k = 0; k < count; k++) grade(from + k, outputs, k * plan.matrix.width, rows.rows, k, corners, 8 * k);
  }
  return result;
}

function emptyResult(plan: MethodPlan, block: number, rings: number): BlockResult {
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
    jointGaps: new Uint32Array(plan.maps.sides * GAP_BINS),
  };
}

/** Every ring of a run is a fresh set-up: shared errors, its test cuts, and one piece. */
function pourPieces(
  plan: MethodPlan,
  seed: number,
  block: number,
  rounds: Uint8Array,
): (out: Float64Array, from: number, count: number) => void {
  const { width } = plan.matrix;
  if (!plan.test) {
    const pour = plan.whole.open(seed, block, 'piece');
    return (out, _from, count) => pour(out, count);
  }
  const shared = setUps(plan, seed, block, rounds);
  const pour = plan.perPiece.open(seed, block, 'piece');
  return (out, from, count) => {
    out.set(shared.subarray(from * width, (from + count) * width));
    pour(out, count);
  };
}

/** The shared outputs of as many set-ups as `rounds` is long, after their test cuts. */
export function setUps(plan: MethodPlan, seed: number, block: number, rounds: Uint8Array): Float64Array {
  const { width } = plan.matrix;
  const count = rounds.length;
  const shared = new Float64Array(count * width);
  plan.shared.open(seed, block, 'set-up')(shared, count);
  if (plan.test) runTestCuts(plan.test, plan.method.test, shared, plan.matrix, count, seed, block, rounds);
  return shared;
}

export interface RingGrading {
  result: BlockResult;
  grade: GradeRing;
}

/** Grades rings that are not part of a block's run, into a result of its own with room for `rings`. */
export function ringGrading(plan: MethodPlan, rings: number): RingGrading {
  const result = emptyResult(plan, 0, rings);
  return { result, grade: gradeInto(plan, result) };
}
