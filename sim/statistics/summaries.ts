import type { GapSummary, SpreadSummary } from '../run/prediction';
import { Moments } from './moments';
import { quantile } from './quantiles';

/**
 * Mean, sample standard deviation and upper quantiles of ascending gaps, in their unit. Give the moments where they are
 * already known; else they are computed here.
 */
export function gapSummary(sorted: Float64Array, moments = new Moments().add(sorted)): GapSummary {
  return {
    mean: moments.mean,
    sd: moments.sd,
    p50: quantile(sorted, 0.5),
    p90: quantile(sorted, 0.9),
    p95: quantile(sorted, 0.95),
    p99: quantile(sorted, 0.99),
  };
}

/** Mean, sample standard deviation, median and the central 90 % of ascending values, in their unit. */
export function spreadSummary(sorted: Float64Array, moments = new Moments().add(sorted)): SpreadSummary {
  return {
    mean: moments.mean,
    sd: moments.sd,
    p05: quantile(sorted, 0.05),
    p50: quantile(sorted, 0.5),
    p95: quantile(sorted, 0.95),
  };
}
