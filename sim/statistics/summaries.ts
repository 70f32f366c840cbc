/** Summaries of many values. Percentiles are picked out one by one: far less work than putting all values in order. */
import type { GapSummary, SpreadSummary } from '../run/prediction';
import { Moments } from './moments';
import { selectQuantile } from './quantiles';

function picker(values: Float64Array): (p: number) => number {
  const scratch = new Float64Array(values.length);
  return (p) => selectQuantile(values, p, scratch);
}

/**
 * Mean, sample standard deviation and upper quantiles of gaps in any order, in their unit. Give the moments where they
 * are already known; else they are computed here.
 */
export function gapSummary(values: Float64Array, moments = new Moments().add(values)): GapSummary {
  const at = picker(values);
  return { mean: moments.mean, sd: moments.sd, p50: at(0.5), p90: at(0.9), p95: at(0.95), p99: at(0.99) };
}

/** Mean, sample standard deviation, median and the central 90 % of values in any order, in their unit. */
export function spreadSummary(values: Float64Array, moments = new Moments().add(values)): SpreadSummary {
  const at = picker(values);
  return { mean: moments.mean, sd: moments.sd, p05: at(0.05), p50: at(0.5), p95: at(0.95) };
}
