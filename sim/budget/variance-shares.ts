/**
 * Which source makes the joints gape: for each source the variance of a joint's signed opening (corner mean at the show
 * edge less corner mean at the hidden edge), averaged over the joints that still give, in the linear map without the
 * no-overlap rule. A row offset adds the same to both edges and so has no share.
 */

import type { Effects } from '../errors/draw-list';
import { RADIANS_PER_DEGREE } from '../geometry/ring';
import type { SourceName } from '../project/document';
import { outputsOf } from '../run/output-matrix';
import type { MethodPlan } from '../run/plan';

/** Mean over the free joints of (2b)² for the misclosure that the effects cause, mm². */
function meanSquareOpening(plan: MethodPlan, effects: Effects): number {
  const { give } = plan.closer;
  const r = outputsOf(plan.matrix, effects);
  let sum = 0;
  for (let f = 0; f < give.free.length; f++) {
    let b = 0;
    for (let k = 0; k < 6; k++) b += give.linear[(f * 3 + 1) * 6 + k]! * r[k]!;
    sum += (2 * b) ** 2;
  }
  return sum / give.free.length;
}

/**
 * Variance of the signed opening by source, mm². With test cuts `tiltAfterTestSdDeg` stands for the spread of the tilt
 * setting that they leave.
 */
export function openingVariances(plan: MethodPlan, tiltAfterTestSdDeg?: number): Map<SourceName, number> {
  const variances = new Map<SourceName, number>();
  const add = (source: SourceName, variance: number) => variances.set(source, (variances.get(source) ?? 0) + variance);
  // Trued flat, two halves no longer know how their staves were cut.
  if (plan.method.assembly.by === 'twoHalves') return variances.set('truing', plan.list.truingMm ** 2);
  const { tilt } = plan.method;
  const untested = (tilt.sharedDeg * RADIANS_PER_DEGREE) ** 2 * (tilt.shape === 'uniform' ? 1 / 3 : 1);
  const tested =
    plan.test?.setting === 'tilt' && tiltAfterTestSdDeg !== undefined && tilt.reset === 'once' && untested > 0
      ? (tiltAfterTestSdDeg * RADIANS_PER_DEGREE) ** 2 / untested
      : 1;
  for (const draw of plan.list.draws) {
    const own = meanSquareOpening(plan, draw) * (draw.shape === 'uniform' ? 1 / 3 : 1);
    add(draw.source, draw.source === 'tiltShared' ? own * tested : own);
  }
  for (const rare of plan.list.rare) {
    // Variance of (happens or not) × exponential.
    const variance = rare.chance * (2 - rare.chance) * rare.mean ** 2;
    add(rare.source, meanSquareOpening(plan, rare) * variance);
  }
  return variances;
}
