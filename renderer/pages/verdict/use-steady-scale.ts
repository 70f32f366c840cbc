/**
 * Keeps the scale where it is while results refine and the limit is dragged; it grows at once when something leaves it,
 * and once another limit is settled it gives back what was needed on the way there alone.
 */
import { useState } from 'react';
import type { GapScale } from '../../charts/gap-scale';
import { useSettled } from '../../state/document-store';

/** A scale that is less than this times too wide is left alone. */
const TOO_WIDE = 1.5;

export interface KeptScale {
  scale: GapScale;
  /** The settled limit that it was last held against, mm. */
  limitMm: number;
}

/** @param limitMm may not leave the scale */
export function steadyScale(kept: KeptScale, wanted: GapScale, limitMm: number, isSettled: boolean): KeptScale {
  const isOtherUnit = kept.scale.stepMm !== wanted.stepMm;
  const isLeft = limitMm > kept.scale.maxMm * (1 + 1e-9) && wanted.maxMm > kept.scale.maxMm;
  const isOtherLimit = isSettled && limitMm !== kept.limitMm;
  const isTooWide = isOtherLimit && kept.scale.maxMm > TOO_WIDE * wanted.maxMm;
  if (!isOtherUnit && !isLeft && !isOtherLimit) return kept;
  const scale = isOtherUnit || isLeft || isTooWide ? wanted : kept.scale;
  return { scale, limitMm: isSettled ? limitMm : kept.limitMm };
}

export function useSteadyScale(wanted: GapScale, limitMm: number): GapScale {
  const isSettled = useSettled((state) => state.isSettled);
  const [kept, setKept] = useState<KeptScale>({ scale: wanted, limitMm });
  const next = steadyScale(kept, wanted, limitMm, isSettled);
  if (next !== kept) setKept(next);
  return next.scale;
}
