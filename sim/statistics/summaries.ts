/** Summaries of many values. Percentiles are picked out without sorting: far less work than putting all in order. */
import type { GapPart, GapSummary, Interval, SpreadPart, SpreadSummary } from './estimates';
import { Moments } from './moments';
import { type QuantileEstimate, selectQuantileIntervals } from './quantiles';

/** A summary, and the 95 % interval of each of its percentiles. */
export interface Summed<Summary, Part extends string> {
  summary: Summary;
  intervals: Record<Part, Interval>;
}

const GAP_PARTS = { p50: 0.5, p90: 0.9, p95: 0.95, p99: 0.99 };
const SPREAD_PARTS = { p05: 0.05, p50: 0.5, p95: 0.95 };

/**
 * Mean, sample standard deviation and upper quantiles of gaps in any order, in their unit. Give the moments where they
 * are already known; else they are computed here.
 */
export function gapSummary(values: Float64Array, moments?: Moments): Summed<GapSummary, GapPart> {
  return summed(values, GAP_PARTS, moments);
}

/** Mean, sample standard deviation, median and the central 90 % of values in any order, in their unit. */
export function spreadSummary(values: Float64Array, moments?: Moments): Summed<SpreadSummary, SpreadPart> {
  return summed(values, SPREAD_PARTS, moments);
}

function summed<Part extends string>(
  values: Float64Array,
  parts: Readonly<Record<Part, number>>,
  moments = new Moments().add(values),
): Summed<{ mean: number; sd: number } & Record<Part, number>, Part> {
  const names = Object.keys(parts) as Part[];
  const found = selectQuantileIntervals(
    values,
    names.map((name) => parts[name]),
  );
  const each = <Value>(of: (estimate: QuantileEstimate) => Value) =>
    Object.fromEntries(names.map((name, i) => [name, of(found[i]!)])) as Record<Part, Value>;
  return {
    summary: { mean: moments.mean, sd: moments.sd, ...each(({ value }) => value) },
    intervals: each(({ low, high }) => ({ low, high })),
  };
}
