import { quantile } from './quantiles';

/**
 * A few equally likely values that stand for an ascending sample: the quantiles at (i + ½)/count, so each dot is one
 * chance in `count`.
 *
 * Source: M. Kay et al., "When (ish) is my bus?", Proc. CHI 2016, 5092–5103 (quantile dot plots).
 */
export function quantileDots(sorted: Float64Array, count = 50): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => quantile(sorted, (i + 0.5) / count));
}
