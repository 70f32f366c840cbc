/** What is said wherever cuts are shown, and what a tight joint does not promise. */
import type { Piece, Stock } from '../project/document';
import { type Display, lengthText } from './figures';

export const FIRST_CAUTION =
  'The manual of your machine, the rules where you work and trained practice go before anything said here.';

/** In the order of the work, from before the switch to after it. */
export const SAW_CAUTIONS: readonly string[] = [
  'Guard and riving knife in place; eyes, ears and lungs protected.',
  'Set the height of the blade for the cut before starting it.',
  'Never cut freehand: the work lies against the gauge, sled or fence for the whole cut.',
  'Nothing trapped between fence and blade: use a stop only before the cut, or a set-back block that ends ahead of the blade.',
  'Never let a stave or wedge lie trapped under the tilted blade.',
  'Stop the blade before clearing wedges and offcuts away.',
];

export const JOINT_CAUTIONS: readonly string[] = [
  'An end-grain mitre is weak even when it is tight: give it splines, a band around it or a base panel.',
  'A joint that had to be filled is weaker still.',
  'Nothing here rates the strength of a joint.',
];

/** What is said besides where settings are changed between cuts. */
export const TEST_CAUTIONS: readonly string[] = [
  'Let the blade come to a stop before you touch its tilt, the gauge or the test piece beside it.',
  'Cut test pieces from strips as long as those of the piece: scrap is no reason to hold less.',
];

/** The cautions for one piece, the machine's manual first. */
export function cautionsFor(piece: Piece, stock: Stock, display: Display, fractions = false): string[] {
  const joints = piece.grain === 'alongRing' || piece.slopeDeg === 90 ? JOINT_CAUTIONS : JOINT_CAUTIONS.slice(1);
  return [...cuttingCautions(piece, stock, display, fractions), ...joints];
}

/** Those that concern the cuts alone, the machine's manual first. */
export function cuttingCautions(piece: Piece, stock: Stock, display: Display, fractions = false): string[] {
  const hold = lengthText(stock.holdMm, display, { fractions });
  const holding =
    piece.grain === 'alongRing'
      ? `Start from strips long enough to hold: stop cutting when ${hold} is left in hand.`
      : 'Start from boards wide enough to hold, and use a push stick where the strip left is narrow.';
  return [FIRST_CAUTION, holding, ...SAW_CAUTIONS];
}
