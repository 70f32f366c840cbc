/** The blade's tilt: how it was set, how it differs from side to side and from cut to cut. */
import { RADIANS_PER_DEGREE } from '../geometry/ring';
import type { Sequence, Tilt } from '../project/document';
import type { Cut } from './cuts';
import type { DrawCollector } from './draw-list';
import { anglesOf, both, onTilt } from './face-index';

export function tiltDraws(
  tilt: Tilt,
  cuts: readonly Cut[],
  sides: number,
  sequence: Sequence,
  to: DrawCollector,
): void {
  const rad = (deg: number) => deg * RADIANS_PER_DEGREE;
  const draw = tilt.shape === 'uniform' ? 'uniform' : 'normal';
  to.offset('aim', 'shared', anglesOf(cuts, 'bevel', rad(tilt.aimDeg)));
  const shared = (weight: number) => both(anglesOf(cuts, 'bevel', weight), onTilt(sides, weight));
  to.offset('tiltShared', 'shared', shared(rad(tilt.biasDeg)));
  if (tilt.reset === 'once') to[draw]('tiltShared', 'shared', shared(rad(tilt.sharedDeg)));
  else for (const cut of cuts) to[draw]('tiltShared', 'perCut', anglesOf([cut], 'bevel', rad(tilt.sharedDeg)));

  const side = rad(tilt.sideDeg);
  if (sequence === 'flipFace') to.normal('tiltSide', 'shared', anglesOf(cuts, 'bevel', side));
  else {
    to.normal('tiltSide', 'shared', anglesOf(cuts, 'bevel', side, 0));
    to.normal('tiltSide', 'shared', anglesOf(cuts, 'bevel', 0, side));
  }
  for (const cut of cuts) to.normal('tiltPerCut', 'perCut', anglesOf([cut], 'bevel', rad(tilt.perCutDeg)));
}
