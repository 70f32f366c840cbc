/** One method's line against the gap, as far as the scale goes. */
import type { Share } from '../../../sim/run/prediction';
import type { GapScale } from '../../charts/gap-scale';
import type { YieldLine } from '../../charts/yield-curve';
import type { WeighedMethod } from './use-verdict';

const CURVE_POINTS = 81;

/** @param shareAt the share of rings that count at a gap, by halving and so at once */
export function curveLine(
  { index, name, isFresh }: WeighedMethod,
  scale: GapScale,
  limitMm: number,
  shareAt: (mm: number) => Share,
): YieldLine {
  const points = Array.from({ length: CURVE_POINTS }, (_, i) => {
    const atMm = (scale.maxMm * i) / (CURVE_POINTS - 1);
    return { limitMm: atMm, ...shareAt(atMm) };
  });
  return { index, name, isFresh, points, valueAtLimit: shareAt(limitMm).value };
}
