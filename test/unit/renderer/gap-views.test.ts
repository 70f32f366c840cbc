/** The bars of the gaps, and methods held against each other: what the page Verdict works out by itself. */
import { expect, test } from 'vitest';
import { barEdges, barShares } from '../../../renderer/charts/bar-rows';
import { gapScale } from '../../../renderer/charts/gap-scale';
import { heldAgainst, RINGS_COMPARED } from '../../../renderer/pages/verdict/held-against';
import type { WeighedMethod } from '../../../renderer/state/use-verdict';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import { runMethod } from '../../../sim/run/run-method';

test('the bars hold every ring once, and every tick of the scale is an edge', () => {
  const scale = gapScale(0.33, 0.15, 'metric');
  const edgesMm = barEdges(scale);
  for (const tick of scale.ticksMm) expect(edgesMm.some((edge) => Math.abs(edge - tick) < 1e-12)).toBe(true);
  const gapsMm = Float64Array.of(0, 0.001, 0.0049, 0.006, 0.1, 0.2, 0.2, 3, 7, scale.maxMm);
  const { noGap, onScale, beyond } = barShares(gapsMm, edgesMm);
  expect(noGap).toBeCloseTo(0.3, 12);
  expect(beyond).toBeCloseTo(0.2, 12);
  expect(onScale[0]).toBeCloseTo(0.1, 12);
  expect(noGap + beyond + onScale.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
});

function weighed(trials: number): WeighedMethod[] {
  const project = exampleProject();
  return [0, 1, 2].map((index) => {
    const result = finish(runMethod(project, index, { trials }));
    return { index, name: result.prediction.name, isFresh: true, isRefined: true, isGraded: true, result };
  });
}

test('methods are held against the best of them, or the one that is named', () => {
  const methods = weighed(4000);
  const best = heldAgainst(methods, null);
  expect(best?.against.index).toBe(2);
  expect(best?.held[2]?.differences).toBeUndefined();
  const [first, second] = methods;
  const lead = (first?.result.prediction.yield.value ?? 0) - (second?.result.prediction.yield.value ?? 0);
  const named = heldAgainst(methods, second?.name ?? '');
  expect(named?.against.index).toBe(1);
  expect(named?.held[0]?.differences?.yield.value).toBeCloseTo(lead, 12);
  expect(named?.held.reduce((sum, { bestChance }) => sum + bestChance.value, 0)).toBeCloseTo(1, 9);
  expect(heldAgainst(methods, 'No such method')?.against.index).toBe(2);
  expect(heldAgainst([], null)).toBeNull();
});

test('of very many rings the first are compared', () => {
  const [long] = weighed(RINGS_COMPARED + 4000);
  if (!long) throw new Error('no method');
  const shifted = {
    ...long.result,
    byRing: { ...long.result.byRing, good: long.result.byRing.good.map((g) => 1 - g) },
  };
  const held = heldAgainst([long, { ...long, index: 1, name: 'Other way', result: shifted }], long.name);
  const good = long.result.byRing.good.subarray(0, RINGS_COMPARED).reduce((sum, g) => sum + g, 0) / RINGS_COMPARED;
  expect(held?.held[1]?.differences?.yield.value).toBeCloseTo(1 - 2 * good, 12);
});
