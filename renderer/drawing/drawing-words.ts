/** The drawings in words, for those who cannot see them. */

import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import type { Lettering } from './lettering';

export function planWords(piece: Piece, { figure }: Lettering): string {
  const geometry = ringGeometry(piece);
  const sizes = [
    `${piece.sides} staves`,
    `${figure(geometry.outsideFlatsMm)} over the outside flats`,
    `${figure(geometry.outsideCornersMm)} over the outside corners`,
    `${figure(geometry.clearOpeningNarrowMm)} clear at the narrow end`,
    `${figure(piece.thicknessMm)} thick`,
  ].join(', ');
  const insert = piece.insert
    ? ` Inside it an insert of ${figure(piece.insert.diameterMm)} with ${figure(piece.insert.clearanceMm)} of clearance.`
    : '';
  return `The ring seen on its narrow end: ${sizes}.${insert}`;
}

export function elevationWords(piece: Piece, { figure, angle }: Lettering): string {
  const lean =
    piece.slopeDeg === 0
      ? 'The staves stand upright'
      : piece.slopeDeg === 90
        ? 'The staves lie flat'
        : `The staves lean ${angle(piece.slopeDeg)} from upright`;
  return `The ring from the side, cut open through the middle of a stave. ${lean}; they measure ${figure(piece.heightMm)} along the face and ${figure(piece.thicknessMm)} in thickness.`;
}

export function staveWords(piece: Piece, { figure, angle }: Lettering): string {
  const geometry = ringGeometry(piece);
  const narrow = 2 * geometry.staveWidthMidMm - geometry.staveWidthMm;
  const widths =
    geometry.crosscutDeg === 0
      ? `${figure(geometry.staveWidthMm)} wide`
      : `${figure(geometry.staveWidthMm)} wide at the wide end, ${figure(geometry.staveWidthMidMm)} in the middle and ${figure(narrow)} at the narrow end`;
  return `One stave: outer face ${widths}, ${figure(piece.heightMm)} high, ${figure(piece.thicknessMm)} thick. Gauge swung ${angle(geometry.crosscutDeg)} from square, blade tilted ${angle(geometry.bevelDeg)} from square. The joint is ${figure(geometry.jointLengthMm)} long through the thickness.`;
}
