/** Keeps the scale where it is while results refine and the limit is dragged; it only grows, when something leaves it. */
import { useState } from 'react';
import type { GapScale } from '../../charts/gap-scale';

/** @param mustFitMm what may not leave the scale */
export function steadyScale(kept: GapScale, wanted: GapScale, mustFitMm: number): GapScale {
  const isOtherUnit = kept.stepMm !== wanted.stepMm;
  const isLeft = mustFitMm > kept.maxMm * (1 + 1e-9) && wanted.maxMm > kept.maxMm;
  return isOtherUnit || isLeft ? wanted : kept;
}

export function useSteadyScale(wanted: GapScale, mustFitMm: number): GapScale {
  const [kept, setKept] = useState(wanted);
  const scale = steadyScale(kept, wanted, mustFitMm);
  if (scale !== kept) setKept(scale);
  return scale;
}
