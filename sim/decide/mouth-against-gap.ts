/** Does the mouth at dry fit tell how the ring will look? How often the gap is over the limit, by the size of the mouth. */
import type { Share } from '../statistics/estimates';
import { selectQuantile } from '../statistics/quantiles';
import { wilson } from '../statistics/wilson';

export interface MouthAgainstGap {
  /** A quarter of all rings has a mouth below, a quarter above these; mm, positive = open. */
  lowerMm: number;
  upperMm: number;
  /** Share with a gap over the limit in the lowest quarter, the half between and the highest quarter. */
  lowest: Share;
  middle: Share;
  highest: Share;
}

/** Both lists ring by ring, equally long and not empty. */
export function mouthAgainstGap(mouthMm: Float64Array, showGapMm: Float64Array, limitMm: number): MouthAgainstGap {
  const lowerMm = selectQuantile(mouthMm, 0.25);
  const upperMm = selectQuantile(mouthMm, 0.75);
  const rings = [0, 0, 0];
  const over = [0, 0, 0];
  for (let k = 0; k < mouthMm.length; k++) {
    const part = mouthMm[k]! < lowerMm ? 0 : mouthMm[k]! > upperMm ? 2 : 1;
    rings[part]!++;
    if (showGapMm[k]! > limitMm) over[part]!++;
  }
  const share = (part: number): Share => wilson(over[part]!, rings[part]!);
  return { lowerMm, upperMm, lowest: share(0), middle: share(1), highest: share(2) };
}
