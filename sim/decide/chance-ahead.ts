/** Of two independent pieces, one made each way: how often is the first the tighter? */
import type { RingSample } from '../run/prediction';
import type { Share } from '../statistics/estimates';
import { normalQuantile } from '../statistics/normal-distribution';

/**
 * P(a < b) + ½P(a = b) for one ring drawn from each sample: the Mann–Whitney statistic, with the 95 % interval from the
 * variance of its placements (DeLong, DeLong & Clarke-Pearson, Biometrics 44, 1988, 837–845).
 */
export function aheadChance(a: RingSample, b: RingSample): Share {
  const [x, y] = [a.showGapMm, b.showGapMm];
  const xAhead = placements(x, y);
  const yBehind = placements(y, x);
  const value = xAhead.mean;
  const error = Math.sqrt(xAhead.variance / x.length + yBehind.variance / y.length);
  const reach = normalQuantile(0.975) * error;
  return { value, low: Math.max(0, value - reach), high: Math.min(1, value + reach) };
}

/** Mean and variance, over ascending x, of the share of ascending y that lies above each x (ties half). */
function placements(x: Float64Array, y: Float64Array): { mean: number; variance: number } {
  let [below, upTo] = [0, 0];
  let [sum, squares] = [0, 0];
  for (const value of x) {
    while (below < y.length && y[below]! < value) below++;
    while (upTo < y.length && y[upTo]! <= value) upTo++;
    const share = 1 - (below + upTo) / 2 / y.length;
    sum += share;
    squares += share * share;
  }
  const mean = sum / x.length;
  return { mean, variance: x.length > 1 ? (squares - x.length * mean * mean) / (x.length - 1) : 0 };
}
