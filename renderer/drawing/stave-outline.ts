/** The outlines of one nominal stave in mm: its outer face, and its right joint seen along the edge. y is up. */
import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import type { Point } from './ring-outline';

/** The outer face as it lies on the bench, the wide end at the bottom, x = 0 on its middle line. */
export function staveFace(piece: Piece): {
  wideLeft: Point;
  wideRight: Point;
  narrowRight: Point;
  narrowLeft: Point;
  widths: { wide: number; middle: number; narrow: number };
} {
  const { staveWidthMm, staveWidthMidMm } = ringGeometry(piece);
  const narrow = 2 * staveWidthMidMm - staveWidthMm;
  return {
    wideLeft: { x: -staveWidthMm / 2, y: 0 },
    wideRight: { x: staveWidthMm / 2, y: 0 },
    narrowRight: { x: narrow / 2, y: piece.heightMm },
    narrowLeft: { x: -narrow / 2, y: piece.heightMm },
    widths: { wide: staveWidthMm, middle: staveWidthMidMm, narrow },
  };
}

/**
 * The right joint in a cut square to its edge, where the bevel shows in full: outer edge at the origin, the outer face
 * along −x, the wood below it. `inner` is the inner edge, at t·tan B back from the outer one and a joint length away.
 */
export function jointSection(piece: Piece): { outer: Point; inner: Point; jointLengthMm: number } {
  const { bevelRad, jointLengthMm } = ringGeometry(piece);
  const { thicknessMm } = piece;
  return {
    outer: { x: 0, y: 0 },
    inner: { x: -thicknessMm * Math.tan(bevelRad), y: -thicknessMm },
    jointLengthMm,
  };
}
