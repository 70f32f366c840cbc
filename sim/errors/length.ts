/** What fixes a stave's width: a mark or a stop, its wear and the chips that lie against it, and the kerf. */
import type { RingGeometry } from '../geometry/ring';
import type { Method, Stock } from '../project/document';
import type { Cut } from './cuts';
import type { DrawCollector } from './draw-list';
import { widthsOf, widthsOfCut } from './face-index';

export function lengthDraws(
  method: Method,
  stock: Stock,
  cuts: readonly Cut[],
  geometry: RingGeometry,
  to: DrawCollector,
): void {
  const { width, blade } = method;
  const staves = Array.from({ length: geometry.sides }, (_, i) => i);
  if (width.by === 'markedEach') {
    for (const i of staves) to.normal('widthShared', 'perCut', widthsOf([i], width.sharedMm));
  } else to.normal('widthShared', 'shared', widthsOf(staves, width.sharedMm));
  for (const i of staves) to.normal('widthPerCut', 'perCut', widthsOf([i], width.perCutMm));

  if (width.by === 'fixedStop') {
    for (const i of staves) {
      const onward = staves.slice(i);
      to.offset('drift', 'perCut', widthsOf(onward, width.driftMeanMm));
      to.normal('drift', 'perCut', widthsOf(onward, width.driftSigmaMm));
      if (width.chipChance > 0 && width.chipMeanMm > 0) {
        to.rare.push({ source: 'chips', chance: width.chipChance, mean: width.chipMeanMm, ...widthsOf([i], -1) });
      }
      if (method.wideFace === 'up') {
        const perThickness = Math.tan(geometry.bevelRad);
        to.normal('thickness', 'perCut', widthsOf([i], stock.thicknessSigmaMm * perThickness));
      }
    }
  }
  const half = blade.kerfSigmaMm / 2;
  for (const cut of cuts) to.normal('kerf', 'perCut', widthsOfCut(cut, -half, -half));
}
