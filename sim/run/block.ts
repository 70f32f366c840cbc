/** One block of simulated rings: what a worker is asked for and what it gives back. */

import { outOfRound } from '../closure/half-openings';
import { slidesFor } from '../closure/joint-give';
import { along } from '../closure/ring-maps';
import { runTestCuts } from '../decide/test-cuts';
import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import { GAP_BINS, gapBin } from './gap-histogram';
import { openRows } from './joint-rows';
import type { MethodPlan } from './plan';

/** Rings drawn at once, few enough to stay in the processor's nearest memory. */
const BATCH_RINGS = 250;

export const GOOD = 0;
export const REWORK = 1;
export const SCRAP = 2;

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
  grade: ReturnType<typeof gradeInto>;
}

/** Grades rings that are not part of a block's run, into a result of its own with room for `rings`. */
export function ringGrading(plan: MethodPlan, rings: number): RingGrading {
  const result = emptyResult(plan, 0, rings);
  return { result, grade: gradeInto(plan, result) };
}

/** Closes one ring and writes what became of it. */
function gradeInto(plan: MethodPlan, result: BlockResult) {
  const { maps, closer, method, project, matrix, sizes } = plan;
  const { limits, piece } = project;
  const n = maps.sides;
  const { pullUpMm } = method.assembly;
  const { outer, inner } = closer;
  const mouth = piece.showFace === 'inside' ? maps.mouthInner : maps.mouthOuter;
  const showOuter = piece.showFace !== 'inside';
  const showInner = piece.showFace !== 'outside';
  const nominalHalf = plan.geometry.clearOpeningNarrowMm / 2;
  const needed = piece.insert ? piece.insert.diameterMm + piece.insert.clearanceMm : Number.NEGATIVE_INFINITY;
  const scrapShow = Math.max(limits.showGapMm, limits.remedyGapMm);
  const scrapHidden = Math.max(limits.hiddenGapMm, limits.remedyGapMm);
  const half = new Float64Array(n);
  const bins = result.jointGaps;
  const r = new Float64Array(6);
  const steps = stepOf(plan);
  const { jointLengthMm, edgeLengthMm } = plan.geometry;

  return (
    ring: number,
    outputs: Float64Array,
    at: number,
    rows: Float64Array,
    row: number,
    corners: Float64Array,
    cornersAt: number,
  ): void => {
    const closes = closer.close(outputs, at, rows, row * 3 * n, corners, cornersAt);
    for (let k = 0; k < 6; k++) r[k] = outputs[at + k]!;
    result.mouthMm[ring] = along(mouth, r);
    let show = 0;
    let hidden = 0;
    for (let j = 0; j < n; j++) {
      const outside = outer[j]! - pullUpMm;
      const inside = inner[j]! - pullUpMm;
      let seen = 0;
      if (showOuter && outside > seen) seen = outside;
      if (showInner && inside > seen) seen = inside;
      if (!showOuter && outside > hidden) hidden = outside;
      if (!showInner && inside > hidden) hidden = inside;
      if (seen > show) show = seen;
      bins[j * GAP_BINS + gapBin(seen)]!++;
    }
    result.showGapMm[ring] = show;
    result.hiddenGapMm[ring] = hidden;
    let fits = true;
    if (sizes) {
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < n; i++) {
        const h = nominalHalf + outputs[at + matrix.halvesAt + i]!;
        half[i] = h;
        if (h < least) least = h;
      }
      result.clearOpeningMm[ring] = 2 * least;
      result.outOfRoundMm[ring] = outOfRound(half, 0, n);
      result.stepMm[ring] = steps(r);
      fits = 2 * least >= needed;
    }
    if (matrix.halfTurnAt >= 0) {
      // Either end face gives half of each turn, deepest at one corner.
      const aboutEdge = Math.abs(outputs[at + matrix.halfTurnAt]!) * jointLengthMm;
      const acrossEdge = Math.abs(outputs[at + matrix.halfTurnAt + 1]!) * edgeLengthMm;
      result.truingMm[ring] = (aboutEdge + acrossEdge) / 2;
    }
    if (plan.test) result.tiltRad[ring] = outputs[at + matrix.tiltAt]!;
    const otherwiseGood = closes && fits && hidden <= limits.hiddenGapMm;
    result.closes[ring] = closes ? 1 : 0;
    result.insertFits[ring] = fits ? 1 : 0;
    result.otherwiseGood[ring] = otherwiseGood ? 1 : 0;
    result.grade[ring] =
      otherwiseGood && show <= limits.showGapMm
        ? GOOD
        : !closes || !fits || show > scrapShow || hidden > scrapHidden
          ? SCRAP
          : REWORK;
  };
}

/** Largest slide at any free joint when the ring is pulled up by the linear map, mm. */
function stepOf(plan: MethodPlan): (r: Float64Array) => number {
  const { give } = plan.closer;
  const lambda = new Float64Array(6);
  return (r) => {
    for (let i = 0; i < 6; i++) {
      let sum = 0;
      for (let k = 0; k < 6; k++) sum += give.linearInverse[i * 6 + k]! * r[k]!;
      lambda[i] = sum;
    }
    let most = 0;
    for (const joint of give.free) {
      const [, up, through] = slidesFor(give, joint, lambda);
      most = Math.max(most, Math.abs(up), Math.abs(through));
    }
    return most;
  };
}
