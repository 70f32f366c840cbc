/** What carries the work past the blade: the guide's square, its swing, its slot, and how the strip seats against it. */
import { RADIANS_PER_DEGREE, type RingGeometry } from '../geometry/ring';
import type { Grain, Guide, Sequence } from '../project/document';
import type { Cut } from './cuts';
import type { DrawCollector } from './draw-list';
import { anglesOf } from './face-index';

export function guideDraws(
  guide: Guide,
  cuts: readonly Cut[],
  sequence: Sequence,
  grain: Grain,
  geometry: RingGeometry,
  to: DrawCollector,
): void {
  const rad = (deg: number) => deg * RADIANS_PER_DEGREE;
  // The swing is looked up on a scale only where there is one.
  const setting = geometry.crosscutRad > 0 ? rad(guide.settingDeg) : 0;
  const slot = rad(guide.slotDeg);
  if (grain === 'upStave') to.normal('guideSetting', 'shared', anglesOf(cuts, 'crosscut', setting));
  else if (sequence === 'flipFace') {
    to.normal('guideZero', 'shared', anglesOf(cuts, 'crosscut', rad(guide.zeroDeg)));
    to.normal('guideSetting', 'shared', anglesOf(cuts, 'crosscut', setting));
    to.normal('guideSlot', 'shared', anglesOf(cuts, 'crosscut', slot));
  } else {
    const zero = rad(guide.zeroDeg);
    to.normal('guideZero', 'shared', anglesOf(cuts, 'crosscut', zero, -zero));
    for (const [source, weight] of [
      ['guideSetting', setting],
      ['guideSlot', slot],
    ] as const) {
      to.normal(source, 'shared', anglesOf(cuts, 'crosscut', weight, 0));
      to.normal(source, 'shared', anglesOf(cuts, 'crosscut', 0, weight));
    }
  }
  for (const cut of cuts) {
    const contactMm = grain === 'upStave' ? geometry.heightMm : Math.min(guide.faceMm, cut.inHandMm);
    to.normal('seat', 'perCut', anglesOf([cut], 'crosscut', guide.seatMm / contactMm));
  }
}
