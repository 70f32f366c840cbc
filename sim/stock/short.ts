/** The chance that the strips do not yield all the staves, when kerf and board length are not what they should be. */
import { pitchMm, type RingGeometry } from '../geometry/ring';
import type { Method, Stock } from '../project/document';
import { normalCdf, normalQuantile } from '../statistics/normal-distribution';
import { kerfAlongStripMm } from './strips';

/** Standard deviations, mm; what varies from cut to cut is the method's own `blade.kerfSigmaMm`. */
export interface StockSpread {
  /** Of the length of a strip about the length given. */
  lengthSigmaMm: number;
  /** Of the kerf about the kerf given, the same in all cuts: one blade. */
  kerfSharedSigmaMm: number;
}

/** Our own guess until it is measured: a board is cut to a few millimetres, a kerf read off the blade to a tenth. */
export const ASSUMED_STOCK_SPREAD: StockSpread = { lengthSigmaMm: 3, kerfSharedSigmaMm: 0.1 };

export interface StaveCount {
  /** Chance that one or more staves are missing. */
  chanceShort: number;
  /** Staves to be expected, up to as many as the ring has. */
  expectedStaves: number;
}

/** A stave that misses its place by less than this is rounding. */
const NOTHING_MM = 1e-6;
/** Values of the shared kerf error averaged over, each as likely as the next. */
const KERFS = 500;

/**
 * How many staves come out of the strips. A strip of length Λ gives k staves when
 *
 *     trim + hold + k·(pitch + m·f·S) + f·Σ e ≤ Λ
 *
 * with m kerfs to a stave (two where a wedge falls out, else one), f what a kerf takes along the strip per millimetre,
 * S ~ Normal(0, kerfSharedSigmaMm) for all cuts, e ~ Normal(0, kerfSigmaMm) for each of the k·m cuts and Λ ~
 * Normal(stripLengthMm, lengthSigmaMm) for each strip. For a given S that is a normal chance, and the strips are
 * independent; a strip with room for one stave more makes up for one that is short. With one strip S joins the normal
 * chance and the result is exact; with more it is averaged over S, which is right to 0.001 at worst.
 *
 * @returns undefined while no strip length is given: then the strips are bought to fit
 */
export function staveCount(
  geometry: RingGeometry,
  { blade, sequence }: Pick<Method, 'blade' | 'sequence'>,
  stock: Stock,
  { lengthSigmaMm, kerfSharedSigmaMm }: StockSpread,
): StaveCount | undefined {
  if (stock.stripLengthMm === undefined) return undefined;
  const room = stock.stripLengthMm - stock.trimMm - stock.holdMm + NOTHING_MM;
  const pitch = pitchMm(geometry, blade, sequence);
  const kerfs = sequence === 'flipFace' ? 1 : 2;
  const perMm = kerfAlongStripMm(geometry, 1);
  const { sides } = geometry;

  /** Chance that one strip gives `k` staves or more, for one shared kerf error and the spread left in it. */
  const gives = (k: number, shared: number, sharedSigma: number): number => {
    const cuts = k * kerfs;
    const kerfVariance = cuts ** 2 * sharedSigma ** 2 + cuts * blade.kerfSigmaMm ** 2;
    const left = room - k * pitch - cuts * perMm * shared;
    return chanceAboveZero(left, Math.sqrt(lengthSigmaMm ** 2 + perMm ** 2 * kerfVariance));
  };
  /** Chances that it gives exactly 0, 1 … N − 1 staves, and N or more. */
  const oneStrip = (shared: number, sharedSigma: number): Float64Array => {
    const chances = new Float64Array(sides + 1);
    let enough = 1;
    for (let k = 0; k < sides; k++) {
      const more = Math.min(enough, gives(k + 1, shared, sharedSigma));
      chances[k] = enough - more;
      enough = more;
    }
    chances[sides] = enough;
    return chances;
  };

  const strips = stock.stripCount;
  if (strips === 1) return summed(oneStrip(0, kerfSharedSigmaMm));
  const nodes = kerfSharedSigmaMm > 0 ? KERFS : 1;
  const mean = new Float64Array(sides + 1);
  for (let node = 0; node < nodes; node++) {
    const shared = kerfSharedSigmaMm * normalQuantile((node + 0.5) / nodes);
    const total = together(oneStrip(shared, 0), strips);
    for (let k = 0; k <= sides; k++) mean[k]! += total[k]! / nodes;
  }
  return summed(mean);
}

function chanceAboveZero(mean: number, sigma: number): number {
  // Nine standard deviations away a chance is below 1 in 10¹⁸, and most counts are.
  if (Math.abs(mean) >= 9 * sigma) return mean > 0 ? 1 : 0;
  return normalCdf(mean / sigma);
}

/** Chances of the sum over equal, independent strips; all that reaches the last count stays there. */
function together(one: Float64Array, strips: number): Float64Array {
  const most = one.length - 1;
  let sum = one;
  for (let strip = 1; strip < strips; strip++) {
    const next = new Float64Array(one.length);
    for (let j = 0; j <= most; j++) {
      if (one[j] === 0) continue;
      for (let k = 0; k <= most; k++) if (sum[k] !== 0) next[Math.min(most, j + k)]! += one[j]! * sum[k]!;
    }
    sum = next;
  }
  return sum;
}

function summed(chances: Float64Array): StaveCount {
  const sides = chances.length - 1;
  const expectedStaves = chances.reduce((sum, chance, staves) => sum + chance * staves, 0);
  return { chanceShort: chances.subarray(0, sides).reduce((sum, chance) => sum + chance, 0), expectedStaves };
}
