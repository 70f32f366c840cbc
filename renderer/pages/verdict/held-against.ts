/** Every method held against one of them, ring by ring on the same luck. */
import { bestChances, type MethodDifferences, methodDifferences } from '../../../sim/decide/differences';
import type { MethodResult } from '../../../sim/run/prediction';
import type { Share } from '../../../sim/statistics/estimates';
import { sortedCopy } from '../../../sim/statistics/quantiles';
import { rankedByMerit } from '../../../sim/wording/verdict';
import type { WeighedMethod } from '../../state/use-verdict';

/** So many rings tell differences finely enough, and are compared before the eye notices. */
export const RINGS_COMPARED = 40_000;

export interface HeldMethod extends WeighedMethod {
  bestChance: Share;
  /** Absent for the one that the others are held against. */
  differences?: MethodDifferences;
}

function firstRings(result: MethodResult): MethodResult {
  if (result.prediction.trials <= RINGS_COMPARED) return result;
  const { showGapMm, hiddenGapMm, mouthMm, stepMm, good, closes, insertFits } = result.byRing;
  const byRing = {
    showGapMm: showGapMm.subarray(0, RINGS_COMPARED),
    hiddenGapMm: hiddenGapMm.subarray(0, RINGS_COMPARED),
    mouthMm: mouthMm.subarray(0, RINGS_COMPARED),
    stepMm: stepMm.subarray(0, RINGS_COMPARED),
    good: good.subarray(0, RINGS_COMPARED),
    closes: closes.subarray(0, RINGS_COMPARED),
    insertFits: insertFits.subarray(0, RINGS_COMPARED),
  };
  return { ...result, byRing, sample: { ...result.sample, showGapMm: sortedCopy(byRing.showGapMm) } };
}

interface Compared {
  bestChances: Share[];
  /** In the order of the results; for the one held against, null. */
  differences: (MethodDifferences | null)[];
}

let last: { results: readonly MethodResult['byRing'][]; against: number; compared: Compared } | null = null;

/** Does not depend on where the limit is drawn just now, so that it is worked out once while the limit is dragged. */
function compareOnce(results: readonly MethodResult[], against: number): Compared {
  const known = last;
  const isSame =
    known?.against === against &&
    known.results.length === results.length &&
    results.every(({ byRing }, i) => byRing === known.results[i]);
  if (known && isSame) return known.compared;
  const rings = results.map(firstRings);
  const base = rings[against];
  const compared = {
    bestChances: bestChances(rings),
    differences: rings.map((own, i) => (base === undefined || i === against ? null : methodDifferences(own, base))),
  };
  last = { results: results.map(({ byRing }) => byRing), against, compared };
  return compared;
}

/** @param wanted name of the method to hold the others against; null or unknown: the one of most merit */
export function heldAgainst(
  methods: readonly WeighedMethod[],
  wanted: string | null,
): { against: WeighedMethod; held: HeldMethod[] } | null {
  const [best] = rankedByMerit(methods.map(({ result }) => result));
  const name = methods.some((method) => method.name === wanted) ? wanted : best?.prediction.name;
  const place = methods.findIndex((method) => method.name === name);
  const against = methods[place];
  if (against === undefined) return null;
  const { bestChances: chances, differences } = compareOnce(
    methods.map(({ result }) => result),
    place,
  );
  const held = methods.map((method, i) => {
    const difference = differences[i];
    return {
      ...method,
      bestChance: chances[i] ?? { value: 0, low: 0, high: 1 },
      ...(difference && { differences: difference }),
    };
  });
  return { against, held };
}
