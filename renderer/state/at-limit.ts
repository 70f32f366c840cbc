/** A method's result read at a show limit: the simulated rings answer for every limit, without being simulated anew. */
import type { MethodResult } from '../../sim/run/prediction';
import { countAtMost } from '../../sim/statistics/ecdf';
import type { Share } from '../../sim/statistics/estimates';
import { wilson } from '../../sim/statistics/wilson';

/** Share of good pieces if every show gap up to `limitMm` were good enough, the other demands as they are. */
export function yieldAt({ prediction, sample }: MethodResult, limitMm: number): Share {
  return wilson(countAtMost(sample.otherwiseGoodShowGapMm, limitMm), prediction.trials);
}

/** The same rings under another limit and the method's present name. Cost and grades stay as they were worked out. */
export function resultAtLimit(result: MethodResult, limitMm: number, name: string): MethodResult {
  return { ...result, prediction: { ...result.prediction, name, yield: yieldAt(result, limitMm) } };
}
