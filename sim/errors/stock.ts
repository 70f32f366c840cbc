/** The strips themselves: cupped across a stave's width, edges not parallel. */
import { RADIANS_PER_DEGREE, type RingGeometry } from '../geometry/ring';
import type { Grain, Sequence, Stock } from '../project/document';
import type { Cut } from './cuts';
import type { DrawCollector } from './draw-list';
import { anglesOf, both } from './face-index';

export function stockDraws(
  stock: Stock,
  cuts: readonly Cut[],
  sequence: Sequence,
  grain: Grain,
  geometry: RingGeometry,
  to: DrawCollector,
): void {
  // An arc with this sagitta over one stave's width slopes by 4·sagitta/width at its ends.
  const slope = (4 * stock.cupMm) / geometry.staveWidthMidMm;
  const taper = stock.edgeTaperDeg * RADIANS_PER_DEGREE;
  const strips = cuts.reduce((most, cut) => Math.max(most, cut.strip + 1), 0);
  for (let strip = 0; strip < strips; strip++) {
    const own = cuts.filter((cut) => cut.strip === strip);
    const odd = own.filter((cut) => cut.order % 2 === 1);
    if (sequence === 'flipFace') {
      const even = own.filter((cut) => cut.order % 2 === 0);
      to.normal('flatness', 'perCut', both(anglesOf(even, 'bevel', slope), anglesOf(odd, 'bevel', -slope)));
      if (grain === 'alongRing') to.normal('flatness', 'perCut', anglesOf(odd, 'crosscut', taper));
    } else {
      to.normal('flatness', 'perCut', anglesOf(own, 'bevel', slope));
      to.normal('flatness', 'perCut', anglesOf(own, 'crosscut', 0, taper));
    }
  }
}
