/** Two or more methods held against each other on common random numbers. Intervals at 95 %. */
import type { MethodResult, RingSample } from '../run/prediction';
import type { Share } from '../statistics/estimates';
import { Moments } from '../statistics/moments';
import { type Difference, pairedMean, pairedQuantile } from '../statistics/paired';
import { sortedCopy } from '../statistics/quantiles';
import { studentQuantile } from '../statistics/student';

/** First less second. */
export interface MethodDifferences {
  yield: Difference;
  showGapMeanMm: Difference;
  showGapP95Mm: Difference;
  /** Cost per accepted piece; null when either has none. */
  cost: Difference | null;
}

/** Difference of two cost ratios over the same set-ups (delta method). */
function costDifference(a: MethodResult, b: MethodResult): Difference | null {
  const [costA, costB] = [a.prediction.cost.perGoodPiece, b.prediction.cost.perGoodPiece];
  if (costA === null || costB === null) return null;
  const count = Math.min(a.setUps.money.length, b.setUps.money.length);
  const influence = ({ setUps }: MethodResult, ratio: number) => {
    const made = setUps.pieces.reduce((sum, p) => sum + p, 0) / setUps.pieces.length;
    return (k: number) => (setUps.money[k]! - ratio * setUps.pieces[k]!) / made;
  };
  const [ofA, ofB] = [influence(a, costA), influence(b, costB)];
  const spread = pairedMean(count, (k) => ofA(k) - ofB(k));
  const reach = (spread.high - spread.low) / 2;
  return { value: costA - costB, low: costA - costB - reach, high: costA - costB + reach };
}

/** Differences between two methods run with the same seed; rings beyond the shorter run are left out. */
export function methodDifferences(a: MethodResult, b: MethodResult): MethodDifferences {
  const count = Math.min(a.byRing.good.length, b.byRing.good.length);
  const [x, y] = [a.byRing.showGapMm, b.byRing.showGapMm];
  return {
    yield: pairedMean(count, (k) => a.byRing.good[k]! - b.byRing.good[k]!),
    showGapMeanMm: pairedMean(count, (k) => x[k]! - y[k]!),
    showGapP95Mm: pairedQuantile(x, y, count, 0.95),
    cost: costDifference(a, b),
  };
}

/** Nodes and weights of 8-point Gauss–Legendre on (0, 1): exact for the ties of up to 16 methods. */
const NODES = [
  0.019855071751231884, 0.10166676129318664, 0.2372337950418355, 0.4082826787521751, 0.591717321247825,
  0.7627662049581645, 0.8983332387068134, 0.9801449282487681,
];
const WEIGHTS = [
  0.05061426814518813, 0.11119051722668724, 0.15685332293894363, 0.181341891689181, 0.181341891689181,
  0.15685332293894363, 0.11119051722668724, 0.05061426814518813,
];

/** Chance that a piece of method `own` is the tightest, one independent piece from each; ties share alike. */
function chanceOfBest(samples: readonly Float64Array[], own: number): number {
  const mine = samples[own]!;
  const others = samples.filter((_, j) => j !== own);
  const below = new Uint32Array(others.length);
  const upTo = new Uint32Array(others.length);
  let sum = 0;
  // Equal values, as those without any gap are, are weighed once.
  for (let k = 0, next = 0; k < mine.length; k = next) {
    const value = mine[k]!;
    while (next < mine.length && mine[next] === value) next++;
    let isTied = false;
    for (let j = 0; j < others.length; j++) {
      const sample = others[j]!;
      while (below[j]! < sample.length && sample[below[j]!]! < value) below[j]!++;
      if (upTo[j]! < below[j]!) upTo[j] = below[j]!;
      while (upTo[j]! < sample.length && sample[upTo[j]!]! <= value) upTo[j]!++;
      isTied ||= upTo[j] !== below[j];
    }
    // Ties broken by lot: integrate over the lot u the chance that no other piece is below, or tied with a better lot.
    let chance = 0;
    for (let n = 0; n < (isTied ? NODES.length : 1); n++) {
      let product = isTied ? WEIGHTS[n]! : 1;
      for (let j = 0; j < others.length; j++) {
        const count = others[j]!.length;
        product *= (count - upTo[j]! + (upTo[j]! - below[j]!) * NODES[n]!) / count;
      }
      chance += product;
    }
    sum += chance * (next - k);
  }
  return sum / mine.length;
}

const BATCHES = 20;

/** For each method the chance of being best among all, interval from batches of rings. The chances add up to 1. */
export function bestChances(results: readonly { sample: RingSample; byRing: { showGapMm: Float64Array } }[]): Share[] {
  const samples = results.map((result) => result.sample.showGapMm);
  const count = Math.min(...samples.map((sample) => sample.length));
  const size = Math.floor(count / BATCHES);
  const batches =
    size < 2
      ? []
      : Array.from({ length: BATCHES }, (_, k) =>
          results.map((result) => sortedCopy(result.byRing.showGapMm.subarray(k * size, (k + 1) * size))),
        );
  return samples.map((_, own) => {
    const value = chanceOfBest(samples, own);
    if (batches.length === 0) return { value, low: 0, high: 1 };
    const perBatch = Float64Array.from(batches, (batch) => chanceOfBest(batch, own));
    const reach = studentQuantile(0.975, BATCHES - 1) * new Moments().add(perBatch).standardError;
    return { value, low: Math.max(0, value - reach), high: Math.min(1, value + reach) };
  });
}
