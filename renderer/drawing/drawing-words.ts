/** The drawings in words, for those who cannot see them. */

import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import type { Lettering } from './lettering';

export function planWords(piece: Piece, { figure }: Lettering): string {
  const geometry = ringGeometry(piece);
  const isFlat = piece.slopeDeg === 90;
  const sizes = [
    `${piece.sides} ${isFlat ? 'members' : 'staves'}`,
    `${figure(geometry.outsideFlatsMm)} over the outside flats`,
    `${figure(geometry.outsideCornersMm)} over the outside corners`,
    `${figure(geometry.clearOpeningNarrowMm)} clear ${isFlat ? 'inside' : 'at the narrow end'}`,
    isFlat ? `members ${figure(piece.heightMm)} wide` : `${figure(piece.thicknessMm)} thick`,
  ].join(', ');
  const insert = piece.insert
    ? ` Inside it an insert of ${figure(piece.insert.diameterMm)} with ${figure(piece.insert.clearanceMm)} of clearance.`
    : '';
  return `The ring seen ${isFlat ? 'from above' : 'on its narrow end'}: ${sizes}.${insert}`;
}

export function elevationWords(piece: Piece, { figure, angle }: Lettering): string {
  if (piece.slopeDeg === 90) {
    return `The frame from the side, cut open through the middle of a member: ${figure(piece.heightMm)} wide and ${figure(piece.thicknessMm)} thick.`;
  }
  const lean =
    piece.slopeDeg === 0 ? 'The staves stand upright' : `The staves lean ${angle(piece.slopeDeg)} from upright`;
  return `The ring from the side, cut open through the middle of a stave. ${lean}; they measure ${figure(piece.heightMm)} along the face and ${figure(piece.thicknessMm)} in thickness.`;
}

export function staveWords(piece: Piece, { figure, angle }: Lettering): string {
  const geometry = ringGeometry(piece);
  const narrow = 2 * geometry.staveWidthMidMm - geometry.staveWidthMm;
  const joint = `The joint is ${figure(geometry.jointLengthMm)} long through the thickness.`;
  if (piece.slopeDeg === 90) {
    return `One member: ${figure(geometry.staveWidthMm)} long at the outer edge, ${figure(geometry.staveWidthMidMm)} in the middle and ${figure(narrow)} at the inner edge, ${figure(piece.heightMm)} wide, ${figure(piece.thicknessMm)} thick. Gauge swung ${angle(geometry.crosscutDeg)} from square, blade upright. ${joint}`;
  }
  const widths =
    geometry.crosscutDeg === 0
      ? `${figure(geometry.staveWidthMm)} wide`
      : `${figure(geometry.staveWidthMm)} wide at the wide end, ${figure(geometry.staveWidthMidMm)} in the middle and ${figure(narrow)} at the narrow end`;
  return `One stave: outer face ${widths}, ${figure(piece.heightMm)} high, ${figure(piece.thicknessMm)} thick. Gauge swung ${angle(geometry.crosscutDeg)} from square, blade tilted ${angle(geometry.bevelDeg)} from square. ${joint}`;
}
