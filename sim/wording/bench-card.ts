/** What a reading of a test piece says, and what to dial for it: in words that leave no doubt which way. */

import { RADIANS_PER_DEGREE, ringGeometry } from '../geometry/ring';
import { MM_PER_INCH, NO_GAP_MM, WILL_NOT_CLOSE_MM } from '../geometry/thresholds';
import type { Method, Piece } from '../project/document';
import type { BenchCard, TestPieceKind } from '../testing/bench-card';
import { capital, type Display, gapText, givenLengthText, lengthText } from './figures';
import { edgeRead, smallAngleText } from './test-pieces';

export interface BenchWords {
  /** What the reading means: "Open by 0.45 mm at the outside edge: the bevels are too small." */
  says: string;
  /** What to do: "Tilt the blade 0.08° further over". */
  act: string;
  /** How far that may miss, to stand beside it. */
  giveOrTake: string;
  /** The same on a square: "0.08° is 0.14 mm at the end of a 100 mm square." Empty when nothing is dialled. */
  onSquare: string;
  /** Where chance alone could have made the reading; else empty. */
  doubt: string;
  /** What stays afterwards. */
  left: string;
}

/** Twice the standard deviation: where a normal error stays 19 times in 20. */
const LIKELY_SDS = 2;
const LIKELY = '19 times in 20';

const SETTINGS = {
  tilt: {
    name: 'tilt',
    small: 'the bevels are too small',
    large: 'the bevels are too large',
    more: (angle: string) => `Tilt the blade ${angle} further over`,
    less: (angle: string) => `Bring the blade ${angle} back towards upright`,
  },
  swing: {
    name: 'swing',
    small: 'the swing is too small',
    large: 'the swing is too large',
    more: (angle: string) => `Swing the gauge ${angle} further from square`,
    less: (angle: string) => `Bring the gauge ${angle} back towards square`,
  },
} as const;

/** "open by 0.45 mm at the outside edge"; how it looks depends on the sign. */
function looks(mm: number, kind: TestPieceKind, piece: Piece, display: Display): string {
  const size = Math.abs(mm);
  const length = size > WILL_NOT_CLOSE_MM ? lengthText(size, display) : gapText(size, display);
  switch (kind) {
    case 'fullRing':
    case 'twoHalvesTogether':
      return mm < 0 ? `overlapping by ${length}` : `open by ${length} at the ${edgeRead(kind, piece)} edge`;
    case 'halfRing':
      return mm < 0 ? `reaching ${length} past the straightedge` : `standing ${length} off the straightedge`;
    case 'pair':
      return mm < 0 ? `${length} of light at the corner` : `${length} of light at the end of the leg`;
  }
}

/** A turn below this cannot be dialled on any saw. */
const NOTHING_DEG = 0.0005;

/** An aim that cannot be read needs no word. */
const isAimed = ({ aimReadingMm }: BenchCard): boolean => Math.abs(aimReadingMm) >= NO_GAP_MM;

function saysText(card: BenchCard, kind: TestPieceKind, piece: Piece, display: Display): string {
  const { missMm, readingMm, aimReadingMm, dialDeg, setting } = card;
  const words = SETTINGS[setting];
  const seen = capital(looks(readingMm, kind, piece, display));
  const aimed = isAimed(card) ? `; by your aim it should be ${looks(aimReadingMm, kind, piece, display)}` : '';
  if (Math.abs(dialDeg) < NOTHING_DEG)
    return `${isAimed(card) ? seen + aimed : 'Nothing to be read'}: the ${words.name} is right.`;
  return `${seen}${aimed}: ${missMm > 0 ? words.small : words.large}.`;
}

/** @param piece and `method` those of the project the card was made for */
export function benchWords(
  card: BenchCard,
  kind: TestPieceKind,
  piece: Piece,
  method: Method,
  display: Display,
): BenchWords {
  const { setting, dialDeg, dialSdDeg, leftOverSdDeg, toldSdDeg, leastToldDeg, stop } = card;
  const words = SETTINGS[setting];
  const says = saysText(card, kind, piece, display);
  const likely = (sdDeg: number): string => smallAngleText(LIKELY_SDS * sdDeg);
  const size = smallAngleText(dialDeg);
  const isNothing = Math.abs(dialDeg) < NOTHING_DEG;
  if (stop || isNothing) {
    const limit = givenLengthText(method.test.stopWhenMm, display);
    const off = isNothing ? 'right' : `${size} too ${dialDeg > 0 ? 'small' : 'large'}`;
    return {
      says,
      act: `Leave the ${words.name} as it is`,
      giveOrTake: stop ? `the reading is within the ${limit} you stop at` : '',
      onSquare: '',
      doubt: '',
      left: `By this reading the ${words.name} is ${off}, give or take ${likely(toldSdDeg)}, ${LIKELY}.`,
    };
  }
  const nextMm = LIKELY_SDS * card.nextReadingSdMm;
  const next = lengthText(nextMm, display, { uncertaintyMm: nextMm / 10 });
  const reads = isAimed(card) ? `within ${next} of what the aim asks for` : `${next} at most, to either side`;
  return {
    says,
    act: dialDeg > 0 ? words.more(size) : words.less(size),
    giveOrTake: `give or take ${likely(dialSdDeg)}, ${LIKELY}`,
    onSquare: `${size} is ${squareText(dialDeg, display)} square.`,
    doubt:
      Math.abs(dialDeg) < leastToldDeg
        ? `Even a perfect setting could read as much by chance: dialling may not make it better.`
        : '',
    left: `Then the ${words.name} is right to within ${likely(leftOverSdDeg)}, ${LIKELY}, and the next test piece should read ${reads}.`,
  };
}

/** "0.14 mm at the end of a 100 mm", on the square that the unit suggests. */
function squareText(deg: number, display: Display): string {
  const lengthMm = display === 'inch' ? 4 * MM_PER_INCH : 100;
  const riseMm = lengthMm * Math.tan(Math.abs(deg) * RADIANS_PER_DEGREE);
  return `${lengthText(riseMm, display)} at the end of a ${lengthText(lengthMm, display)}`;
}

export interface Readout {
  label: string;
  beforeDeg: number;
  afterDeg: number;
}

/** What the setting should show before any correction, degrees from square. */
export function nominalReadoutDeg(setting: BenchCard['setting'], piece: Piece, method: Method): number {
  const { bevelDeg, crosscutDeg } = ringGeometry(piece);
  return setting === 'tilt' ? bevelDeg + method.tilt.aimDeg : crosscutDeg;
}

/** The same correction on a readout that counts from square and on one that counts from the table or the blade. */
export function readouts(card: BenchCard, shownDeg: number): readonly [Readout, Readout] {
  const dialDeg = card.stop ? 0 : card.dialDeg;
  const name = card.setting === 'tilt' ? 'Tilt' : 'Swing';
  const other = card.setting === 'tilt' ? 'the table' : 'the blade';
  return [
    { label: `${name} from square`, beforeDeg: shownDeg, afterDeg: shownDeg + dialDeg },
    { label: `${name} from ${other}`, beforeDeg: 90 - shownDeg, afterDeg: 90 - shownDeg - dialDeg },
  ];
}

/** "15.08°": always two places, as a readout shows it. */
export function readoutText(deg: number): string {
  return `${deg.toFixed(2)}°`;
}
