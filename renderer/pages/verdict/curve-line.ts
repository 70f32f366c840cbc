/** One method's line against the gap, as far as the scale goes. */
import { countAtMost } from '../../../sim/statistics/ecdf';
import { wilson } from '../../../sim/statistics/wilson';
import type { CurvePoint } from '../../charts/curves';
import type { GapScale } from '../../charts/gap-scale';
import type { YieldLine } from '../../charts/yield-curve';
import type { WeighedMethod } from '../../state/use-verdict';

const CURVE_POINTS = 81;

const known = new WeakMap<Float64Array, { scale: GapScale; points: CurvePoint[] }>();

/** The same list for the same gaps and scale, so that what is drawn is not drawn again while only the limit moves. */
function pointsOnce(gapsMm: Float64Array, trials: number, scale: GapScale): CurvePoint[] {
  const found = known.get(gapsMm);
  if (found?.scale === scale) return found.points;
  const points = Array.from({ length: CURVE_POINTS }, (_, i) => {
    const limitMm = (scale.maxMm * i) / (CURVE_POINTS - 1);
    return { limitMm, ...wilson(countAtMost(gapsMm, limitMm), trials) };
  });
  known.set(gapsMm, { scale, points });
  return points;
}

/** @param gapsMm ascending gaps of the rings that count, of all that were simulated */
export function curveLine(method: WeighedMethod, gapsMm: Float64Array, scale: GapScale, limitMm: number): YieldLine {
  const { index, name, isFresh, result } = method;
  const { trials } = result.prediction;
  const points = pointsOnce(gapsMm, trials, scale);
  return { index, name, isFresh, points, valueAtLimit: countAtMost(gapsMm, limitMm) / trials };
}
