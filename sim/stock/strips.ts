/** Where every cut falls on its strip, and what each strip must measure. Millimetres along the strip. */
import type { Cut } from '../errors/cuts';
import { methodCuts } from '../errors/sources';
import { pitchMm, type RingGeometry, stavesPerStrip, stripNeededMm } from '../geometry/ring';
import type { Method, Project } from '../project/document';

export interface StripCut extends Cut {
  /**
   * What the kerf takes, measured from the strip's first end. With the faces turned over it is measured at mid-height
   * and mid-thickness, where the slanting cuts are evenly spaced; with sides swapped along the wide edge of the show
   * face, where the kerfs on either side of a wedge touch.
   */
  kerfFromMm: number;
  kerfToMm: number;
  /** `flipFace`: the strip lies on its other face. `swapSides`: it is turned end for end, the gauge on the other side. */
  turned: boolean;
  /** Strip that is left after the cut. */
  leftMm: number;
}

export interface Strip {
  firstStave: number;
  staves: number;
  lengthMm: number;
  /** Trim, staves and the length to hold. */
  neededMm: number;
  cuts: StripCut[];
}

/** The strips of one method in the order they are cut, each with its cuts in order. Without a length they are just enough. */
export function stripsOf(project: Project, method: Method, geometry: RingGeometry): Strip[] {
  const { stock, piece } = project;
  const { blade, sequence } = method;
  const fullestMm = stripNeededMm(geometry, blade, sequence, stock);
  const lengthMm = stock.stripLengthMm ?? fullestMm;
  const pitch = pitchMm(geometry, blade, sequence);
  const kerf = kerfAlongStripMm(geometry, blade.kerfMm);
  const counts = stavesPerStrip(piece.sides, stock.stripCount);
  const cuts = methodCuts(project, method, geometry);
  let firstStave = 0;
  return counts.map((staves, strip) => {
    const first = firstStave;
    firstStave += staves;
    return {
      firstStave: first,
      staves,
      lengthMm,
      neededMm: fullestMm - (counts[0]! - staves) * pitch,
      cuts: cuts.filter((cut) => cut.strip === strip).map(placed),
    };
  });

  function placed(cut: Cut): StripCut {
    const kerfToMm =
      sequence === 'flipFace'
        ? stock.trimMm + cut.order * pitch
        : // A right face's kerf ends where the next left face's begins, one kerf before that stave.
          stock.trimMm + Math.ceil(cut.order / 2) * pitch - (cut.right === undefined ? 0 : kerf);
    return { ...cut, kerfFromMm: kerfToMm - kerf, kerfToMm, turned: cut.order % 2 === 1, leftMm: lengthMm - kerfToMm };
  }
}

/** What a kerf takes along the strip; a joint face leans half a turn of the ring away from square, by whatever setting. */
export function kerfAlongStripMm(geometry: RingGeometry, kerfMm: number): number {
  return kerfMm / Math.cos(geometry.halfTurnRad);
}
