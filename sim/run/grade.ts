/** Closing one ring and writing what became of it: gaps, mouth, sizes, and whether it is good, to be reworked or scrap. */
import { outOfRound } from '../closure/half-openings';
import type { BlockResult } from './block-result';
import type { JointGaps } from './joint-gaps';
import type { MethodPlan } from './plan';

export const GOOD = 0;
export const REWORK = 1;
export const SCRAP = 2;

/**
 * Closes the ring whose outputs begin at `at`, with the row offsets of ring `row` of the batch and, for two halves, the
 * corners from `cornersAt`, and writes it to place `ring` of the result.
 */
export type GradeRing = (
  ring: number,
  outputs: Float64Array,
  at: number,
  rows: Float64Array,
  row: number,
  corners: Float64Array,
  cornersAt: number,
) => void;

/** @param jointGaps takes the show gaps of every joint */
export function gradeInto(plan: MethodPlan, result: BlockResult, jointGaps: JointGaps): GradeRing {
  const { maps, closer, project, matrix } = plan;
  const { limits, piece } = project;
  const rowsPerRing = 3 * maps.sides;
  const [m0, m1, m2, m3, m4, m5] = piece.showFace === 'inside' ? maps.mouthInner : maps.mouthOuter;
  const scrapShow = Math.max(limits.showGapMm, limits.remedyGapMm);
  const scrapHidden = Math.max(limits.hiddenGapMm, limits.remedyGapMm);
  const { mouthMm, showGapMm, hiddenGapMm, grade } = result;
  const worst = worstGaps(plan, jointGaps);
  const fits = plan.sizes ? sizesInto(plan, result) : () => true;
  const { jointLengthMm, edgeLengthMm } = plan.geometry;

  return (ring, outputs, at, rows, row, corners, cornersAt) => {
    const closes = closer.close(outputs, at, rows, row * rowsPerRing, corners, cornersAt);
    mouthMm[ring] =
      m0! * outputs[at]! +
      m1! * outputs[at + 1]! +
      m2! * outputs[at + 2]! +
      m3! * outputs[at + 3]! +
      m4! * outputs[at + 4]! +
      m5! * outputs[at + 5]!;
    worst.measure(closes);
    const show = worst.gaps[0]!;
    const hidden = worst.gaps[1]!;
    showGapMm[ring] = show;
    hiddenGapMm[ring] = hidden;
    const insertFits = fits(ring, outputs, at) && closes;
    if (matrix.halfTurnAt >= 0) {
      // Either end face gives half of each turn, deepest at one corner.
      const aboutEdge = Math.abs(outputs[at + matrix.halfTurnAt]!) * jointLengthMm;
      const acrossEdge = Math.abs(outputs[at + matrix.halfTurnAt + 1]!) * edgeLengthMm;
      result.truingMm[ring] = (aboutEdge + acrossEdge) / 2;
    }
    if (matrix.tiltAt >= 0) result.tiltRad[ring] = outputs[at + matrix.tiltAt]!;
    const otherwiseGood = closes && insertFits && hidden <= limits.hiddenGapMm;
    result.closes[ring] = closes ? 1 : 0;
    result.insertFits[ring] = insertFits ? 1 : 0;
    result.otherwiseGood[ring] = otherwiseGood ? 1 : 0;
    const scrap = !closes || !insertFits || show > scrapShow || hidden > scrapHidden;
    grade[ring] = otherwiseGood && show <= limits.showGapMm ? GOOD : scrap ? SCRAP : REWORK;
  };
}

/** The worst gaps after pull-up of the ring just closed, [show, hidden], mm; notes every joint's show gap on the way. */
function worstGaps(
  plan: MethodPlan,
  { gapsMm, stride, counts, leastMm, countedOverMm }: JointGaps,
): { gaps: Float64Array; measure: (closes: boolean) => void } {
  const { closer, method, project } = plan;
  const n = plan.maps.sides;
  const pullUp = method.assembly.pullUpMm;
  const { showFace } = project.piece;
  const seen = showFace === 'inside' ? closer.inner : closer.outer;
  const other = showFace === 'inside' ? closer.outer : closer.inner;
  const bothShow = showFace === 'both';
  const gaps = new Float64Array(2);
  const measure = (closes: boolean) => {
    const least = closes ? Number.NEGATIVE_INFINITY : countedOverMm;
    let show = 0;
    let hidden = closes || bothShow ? 0 : countedOverMm;
    for (let j = 0; j < n; j++) {
      let gap = seen[j]! - pullUp;
      const behind = other[j]! - pullUp;
      if (bothShow) {
        if (behind > gap) gap = behind;
      } else if (behind > hidden) hidden = behind;
      if (gap < least) gap = least;
      if (gap > show) show = gap;
      if (gap >= leastMm[j]!) gapsMm[j * stride + counts[j]!++] = gap;
    }
    gaps[0] = show;
    gaps[1] = hidden;
  };
  return { gaps, measure };
}

/** Writes the sizes of a ring; the function returned says whether the insert fits. */
function sizesInto(
  plan: MethodPlan,
  result: BlockResult,
): (ring: number, outputs: Float64Array, at: number) => boolean {
  const { closer, matrix } = plan;
  const { insert } = plan.project.piece;
  const n = plan.maps.sides;
  const nominal = plan.geometry.clearOpeningNarrowMm / 2;
  const needed = insert ? insert.diameterMm + insert.clearanceMm : Number.NEGATIVE_INFINITY;
  const half = new Float64Array(n);
  const r = new Float64Array(6);
  return (ring, outputs, at) => {
    for (let k = 0; k < 6; k++) r[k] = outputs[at + k]!;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < n; i++) {
      const h = nominal + outputs[at + matrix.halvesAt + i]!;
      half[i] = h;
      if (h < least) least = h;
    }
    result.clearOpeningMm[ring] = 2 * least;
    result.outOfRoundMm[ring] = outOfRound(half, n);
    result.stepMm[ring] = closer.stepMm(r);
    return 2 * least >= needed;
  };
}
