/** Summaries of many values. Percentiles are picked out without sorting: far less work than putting all in order. */
import type { GapSummary, SpreadSummary } from '../run/prediction';
import { Moments } from './moments';
import { selectQuantiles } from './quantiles';

/**
 * Mean, sample standard deviation and upper quantiles of gaps in any order, in their unit. Give the moments where they
 * are already known; else they are computed here.
 */
export function gapSummary(values: Float64Array, moments = new Moments().add(values)): GapSummary {
  const [p50, p90, p95, p99] = selectQuantiles(values, [0.5, 0.9, 0.95, 0.99]);
  return { mean: moments.mean, sd: moments.sd, p50: p50!, p90: p90!, p95: p95!, p99: p99! };
}

/** Mean, sample standard deviation, median and the central 90 % of values in any order, in their unit. */
export function spreadSummary(values: Float64Array, moments = new Moments().add(values)): SpreadSummary {
  const [p05, p50, p95] = selectQuantiles(values, [0.05, 0.5, 0.95]);
  return { mean: moments.mean, sd: moments.sd, p05: p05!, p50: p50!, p95: p95! };
}
