/** What a figure is told with. The keys are those of the JSON that the program writes. */

/** A share of all rings with its 95 % Wilson interval. */
export interface Share {
  value: number;
  low: number;
  high: number;
}

/** A 95 % interval. */
export interface Interval {
  low: number;
  high: number;
}

export interface GapSummary {
  mean: number;
  sd: number;
  p50: number;
  p90: number;
  p95: number;
  p99: number;
}

export interface SpreadSummary {
  mean: number;
  sd: number;
  p05: number;
  p50: number;
  p95: number;
}

export type GapPart = Exclude<keyof GapSummary, 'mean' | 'sd'>;
export type SpreadPart = Exclude<keyof SpreadSummary, 'mean' | 'sd'>;
