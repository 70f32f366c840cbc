/**
 * Which source makes the joints gape: for each source the variance of a joint's signed opening (corner mean at the show
 * edge less corner mean at the hidden edge), averaged over the joints that still give, in the linear map without the
 * no-overlap rule. A row offset adds the same to both edges and so has no share.
 */

import type { SourceName } from '../project/document';
import { outputsOf } from '../run/output-matrix';
import type { MethodPlan } from '../run/plan';

/** Mean over the free joints of (2b)² for given outputs of a run, mm². */
function meanSquareOpening(plan: MethodPlan, outputs: Float64Array): number {
  const { give } = plan.closer;
  let sum = 0;
  for (let f = 0; f < give.free.length; f++) {
    let b = 0;
    for (let k = 0; k < 6; k++) b += give.linear[(f * 3 + 1) * 6 + k]! * outputs[k]!;
    sum += (2 * b) ** 2;
  }
  return sum / give.free.length;
}

/** What a shared error still does once a test piece has been read and the setting dialled back by its reading. */
function afterTest(plan: MethodPlan, outputs: Float64Array): Float64Array {
  const { test, matrix } = plan;
  if (!test) return outputs;
  const dialledDeg = -outputs[matrix.readingAt]! / test.mmPerDeg;
  return outputs.map((value, o) => value + dialledDeg * test.perDegree[o]!);
}

/**
 * Variance of the signed opening by source, mm². Test cuts take out of every shared error what the test piece shows of
 * it; what they leave in the setting, of standard deviation `leftOverDeg`, is that setting's own share.
 */
export function openingVariances(plan: MethodPlan, leftOverDeg = 0): Map<SourceName, number> {
  const variances = new Map<SourceName, number>();
  const add = (source: SourceName, variance: number) => variances.set(source, (variances.get(source) ?? 0) + variance);
  // Trued flat, two halves no longer know how their staves were cut.
  if (plan.method.assembly.by === 'twoHalves') return variances.set('truing', plan.list.truingMm ** 2);
  for (const draw of plan.list.draws) {
    const outputs = outputsOf(plan.matrix, draw);
    const left = draw.stage === 'shared' ? afterTest(plan, outputs) : outputs;
    add(draw.source, meanSquareOpening(plan, left) * (draw.shape === 'uniform' ? 1 / 3 : 1));
  }
  for (const rare of plan.list.rare) {
    // Variance of (happens or not) × exponential.
    const variance = rare.chance * (2 - rare.chance) * rare.mean ** 2;
    add(rare.source, meanSquareOpening(plan, outputsOf(plan.matrix, rare)) * variance);
  }
  if (plan.test) {
    const setting = plan.test.setting === 'tilt' ? 'tiltShared' : 'guideSetting';
    add(setting, meanSquareOpening(plan, plan.test.perDegree) * leftOverDeg ** 2);
  }
  return variances;
}
