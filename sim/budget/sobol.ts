/**
 * Variance-based sensitivity indices of any model whose random inputs fall into independent groups.
 *
 * First order by Saltelli 2010, total by Jansen 1999 (Saltelli et al., Computer Physics Communications 181, 2010,
 * 259–270, Table 2): S = mean f(B)[f(AB) − f(A)] / V, ST = mean [f(A) − f(AB)]² / 2V, where AB is sample A with one group
 * taken from B. Intervals at 95 % by the delta method over the trials. Estimates may come out slightly below 0.
 */
import { normalQuantile } from '../statistics/normal-distribution';

export interface IndexEstimate {
  value: number;
  low: number;
  high: number;
}

export interface GroupIndices {
  first: IndexEstimate;
  total: IndexEstimate;
}

/** Values of the model on the same trials: every group from A, every group from B, and from A but for one group. */
export interface GroupedSample {
  a: Float64Array;
  b: Float64Array;
  /** One array a group. */
  mixed: readonly Float64Array[];
}

/** Mean and, from the influence of each trial, interval of a ratio of two means over the same trials. */
function ratio(above: Float64Array, below: Float64Array): IndexEstimate {
  const n = above.length;
  let [top, bottom] = [0, 0];
  for (let k = 0; k < n; k++) {
    top += above[k]!;
    bottom += below[k]!;
  }
  const value = bottom > 0 ? top / bottom : 0;
  let squares = 0;
  for (let k = 0; k < n; k++) squares += (above[k]! - value * below[k]!) ** 2;
  const reach = bottom > 0 ? (normalQuantile(0.975) * Math.sqrt(squares)) / bottom : 0;
  return { value, low: value - reach, high: value + reach };
}

export function sobolIndices(sample: GroupedSample): GroupIndices[] {
  const { a, b, mixed } = sample;
  const n = a.length;
  let mean = 0;
  for (let k = 0; k < n; k++) mean += (a[k]! + b[k]!) / (2 * n);
  // Either sample estimates the variance; both together do it better.
  const variance = Float64Array.from(a, (x, k) => ((x - mean) ** 2 + (b[k]! - mean) ** 2) / 2);
  const product = new Float64Array(n);
  const square = new Float64Array(n);
  return mixed.map((m) => {
    for (let k = 0; k < n; k++) {
      // Centred on the mean: the same expectation with far less noise.
      product[k] = (b[k]! - mean) * (m[k]! - a[k]!);
      square[k] = (a[k]! - m[k]!) ** 2 / 2;
    }
    return { first: ratio(product, variance), total: ratio(square, variance) };
  });
}
