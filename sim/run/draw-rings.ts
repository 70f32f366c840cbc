/** Drawing the rings of one block, one after another, for whoever wants to look at them. */

import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import { runTestCuts } from '../testing/test-cuts';
import type { GradeRing } from './grade';
import { openRows } from './joint-rows';
import type { MethodPlan } from './plan';

/** Rings drawn at once, few enough to stay in the processor's nearest memory. */
export const BATCH_RINGS = 160;

/**
 * Draws `rings` rings of a block and shows each to `visit`, with the place of its outputs, row offsets and corners. The
 * rounds of test cuts and the recuts of each are written to `counts`. Same plan, seed, block and count: the same bits.
 * Yields after every few rings.
 */
export function* drawRings(
  plan: MethodPlan,
  seed: number,
  block: number,
  rings: number,
  counts: { rounds: Uint8Array; recuts: Uint8Array },
  visit: GradeRing,
): Generator<void, void, void> {
  const { width } = plan.matrix;
  const piece = pourPieces(plan, seed, block, counts.rounds);
  const rows = openRows(plan.list, plan.engine, seed, block, 'piece', BATCH_RINGS);
  const halves = plan.method.assembly.by === 'twoHalves';
  const corners = new Float64Array(halves ? 8 * BATCH_RINGS : 0);
  const truing = stream(seed, 'piece truing', block);
  const outputs = new Float64Array(BATCH_RINGS * width);
  for (let from = 0; from < rings; from += BATCH_RINGS) {
    const count = Math.min(BATCH_RINGS, rings - from);
    outputs.fill(0);
    piece(outputs, from, count);
    rows.pour(count);
    counts.recuts.set(rows.recuts.subarray(0, count), from);
    if (halves) {
      fillNormals(truing, corners, 0, 8 * count);
      for (let k = 0; k < 8 * count; k++) corners[k]! *= plan.list.truingMm;
    }
    for (let k = 0; k < count; k++) visit(from + k, outputs, k * width, rows.rows, k, corners, 8 * k);
    yield;
  }
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
