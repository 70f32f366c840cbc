import type { Piece } from '../../../sim/project/document';

/** A ring of 600 mm over the flats, 120 mm high, of 18 mm stock. */
export function piece(sides: number, slopeDeg: number, changes: Partial<Piece> = {}): Piece {
  return {
    sides,
    slopeDeg,
    grain: 'alongRing',
    size: { by: 'outsideFlats', mm: 600 },
    heightMm: 120,
    thicknessMm: 18,
    showFace: 'outside',
    ...changes,
  };
}
