/** How the saw is set for a piece, in a sentence. */
import { ringGeometry } from '../geometry/ring';
import type { Project } from '../project/document';
import { type AngleStyle, angleText, lengthText } from './figures';

/** "Tilt the blade 15° and cut 12 staves 75.0 mm wide." */
export function settingSentence(
  { piece, display }: Project,
  angleStyle: AngleStyle = 'decimal',
  fractions = false,
): string {
  const { bevelDeg, crosscutDeg, staveWidthMm } = ringGeometry(piece);
  const tilt = bevelDeg === 0 ? 'Leave the blade square' : `Tilt the blade ${angleText(bevelDeg, angleStyle)}`;
  const swing = crosscutDeg === 0 ? '' : `, swing the gauge ${angleText(crosscutDeg, angleStyle)}`;
  const width = lengthText(staveWidthMm, display, { uncertaintyMm: 0.1, fractions });
  return `${tilt}${swing} and cut ${piece.sides} staves ${width} wide.`;
}
