/** The test pieces in the trade's words: what is cut, where it is read and with what, and what a reading means. */

import { ringGeometry } from '../geometry/ring';
import { MM_PER_INCH } from '../geometry/thresholds';
import { TEST_KIND_NAMES } from '../project/choice-words';
import type { Method, Piece, TestCuts, TestKind } from '../project/document';
import type { TestPieceFigures, TestPieceKind } from '../testing/bench-card';
import { LEAST_SENSITIVITY_MM_PER_DEG } from '../testing/test-reading';
import { angleText, countText, type Display, givenLengthText, lengthText, listText } from './figures';

export interface TestKindWords {
  label: string;
  /** As it stands in a sentence: "with a whole ring". */
  name: string;
  explanation: string;
}

export const TEST_KIND_WORDS: Readonly<Record<TestKind, TestKindWords>> = {
  none: { label: 'No test', name: TEST_KIND_NAMES.none, explanation: 'The first cuts are those of the piece.' },
  fullRing: {
    label: 'A whole ring',
    name: TEST_KIND_NAMES.fullRing,
    explanation: 'Cut in scrap and closed dry; the last joint shows what all the others add up to.',
  },
  halfRing: {
    label: 'Half a ring',
    name: TEST_KIND_NAMES.halfRing,
    explanation: 'One end face is held flat to a straightedge, the other end is read: half the wood, half the reading.',
  },
  twoHalvesTogether: {
    label: 'Two halves together',
    name: TEST_KIND_NAMES.twoHalvesTogether,
    explanation: 'Two dry half rings meet at one side; the opening at the other shows as much as a whole ring.',
  },
  pair: {
    label: 'A pair of offcuts',
    name: TEST_KIND_NAMES.pair,
    explanation:
      'One closed joint is held to a reference angle and read at the end of an arm: the least wood, seldom the most told.',
  },
};

/** The edge of the joint that is read. */
export function edgeRead(kind: TestPieceKind, piece: Piece): 'outside' | 'inside' {
  return kind === 'fullRing' && piece.showFace === 'inside' ? 'inside' : 'outside';
}

export interface ReadingWords {
  /** What is done with the test piece, and where it is read. */
  where: string;
  /** What it is read with. */
  tool: string;
  /** What is seen when the angle is too small, and too large. */
  open: string;
  over: string;
}

/** How a test piece is read. A pair is read over the arm given, or over the stave's width. */
export function readingWords(kind: TestPieceKind, piece: Piece, method: Method, display: Display): ReadingWords {
  const edge = edgeRead(kind, piece);
  const middle = piece.slopeDeg === 90 ? 'half-way along the joint' : 'half-way up';
  const feelers = 'Feeler gauges, or a slim wedge pushed in until it binds and measured there.';
  switch (kind) {
    case 'fullRing':
      return {
        where: `Close the ring dry with every joint but the last held tight, and read the last joint at its ${edge} edge, ${middle}.`,
        tool: feelers,
        open: `It stands open at the ${edge} edge`,
        over: 'The two ends overlap',
      };
    case 'halfRing':
      return {
        where: `Close half the ring dry, hold one end face flat to a straightedge, and read how far the outside edge of the other end face stands off it, ${middle}.`,
        tool: 'A straightedge longer than the ring is wide, and feeler gauges.',
        open: 'The far end stands off the straightedge',
        over: 'The far end reaches past the straightedge',
      };
    case 'twoHalvesTogether':
      return {
        where: `Close two half rings dry, hold them together tight at one side, and read the other side at its outside edge, ${middle}.`,
        tool: feelers,
        open: 'It stands open at the outside edge',
        over: 'The two ends overlap',
      };
    case 'pair': {
      const arm = armText(piece, method, display);
      const corner = angleText(180 - 360 / piece.sides);
      return {
        where: `Close one joint of two offcuts and hold a reference angle of ${corner} inside the corner, seen along the ring’s axis, one leg flat to one offcut. Read the light under the other leg, ${arm} from the corner.`,
        tool: `A reference angle known to be right, with legs of ${arm} or more, and thin feeler gauges.`,
        open: 'Light at the end of the leg',
        over: 'Light at the corner',
      };
    }
  }
}

/** An arm that is given as it is given; the stave's width to what a rule shows. */
function armText(piece: Piece, method: Method, display: Display): string {
  const { armMm } = method.test;
  if (armMm !== undefined) return givenLengthText(armMm, display);
  return lengthText(ringGeometry(piece).staveWidthMm, display, { uncertaintyMm: 1 });
}

const SETTING_WORDS = { tilt: 'tilt', swing: 'swing' } as const;

/** "1° of the tilt shows as 60.7 mm", to three digits. */
export function showsText({ setting, mmPerDeg }: TestPieceFigures, display: Display): string {
  return `1° of the ${SETTING_WORDS[setting]} shows as ${perDegreeText(mmPerDeg, display)}.`;
}

/** "60.7 mm", "2.39 in": three digits. */
export function perDegreeText(mmPerDeg: number, display: Display): string {
  const mm = Math.abs(mmPerDeg);
  const [value, unit] = display === 'inch' ? [mm / MM_PER_INCH, 'in'] : [mm, 'mm'];
  return `${value < 100 ? value.toPrecision(3) : countText(value)} ${unit}`;
}

/** An angle that is small itself, or an error: to two digits, hundredths of a degree at least. */
export function smallAngleText(deg: number): string {
  const size = Math.abs(deg);
  return `${size.toFixed(size < 0.0095 ? 3 : 2)}°`;
}

/** Why a kind of test piece cannot be used, and what can be done; null when it can. */
export function refusalSentence(
  kind: TestPieceKind,
  { refusal, setting, mmPerDeg }: TestPieceFigures,
  piece: Piece,
  method: Method,
  display: Display,
): string | null {
  const { label } = TEST_KIND_WORDS[kind];
  if (refusal === 'odd sides') {
    return `${label} ${kind === 'halfRing' ? 'needs' : 'need'} an even number of sides, but there are ${piece.sides}. Use a whole ring or a pair of offcuts.`;
  }
  if (refusal === null) return null;
  const over = kind === 'pair' ? ` over an arm of ${armText(piece, method, display)}` : '';
  const least = lengthText(LEAST_SENSITIVITY_MM_PER_DEG, display);
  const remedy = kind === 'pair' ? 'Use a longer arm or another test piece.' : 'Use another test piece.';
  return `${label}${over} moves ${lengthText(Math.abs(mmPerDeg), display)} for each degree of the ${setting}, below the ${least} that can be read. ${remedy}`;
}

interface TestPieceJudged {
  kind: TestPieceKind;
  figures: TestPieceFigures;
  /** Why it cannot be used; null when it can. */
  refusal: string | null;
}

/** Which test piece shows the smallest error of the setting, and how the one in use compares. */
export function tellsMostSentence(pieces: readonly TestPieceJudged[], inUse: TestKind): string {
  const fit = pieces.filter(({ refusal }) => refusal === null);
  const least = Math.min(...fit.map(({ figures }) => figures.leastToldDeg));
  // What comes to the same figure tells the same.
  const best = fit.filter(({ figures }) => smallAngleText(figures.leastToldDeg) === smallAngleText(least));
  const first = best[0];
  if (first === undefined) return 'None of the test pieces tells enough about this piece.';
  const names = listText(best.map(({ kind }) => TEST_KIND_WORDS[kind].name));
  const errors = `an error of the ${first.figures.setting} down to ${smallAngleText(least)}`;
  const said = `${names.charAt(0).toUpperCase()}${names.slice(1)} ${best.length > 1 ? 'tell' : 'tells'} most: ${errors}`;
  const own = fit.find(({ kind }) => kind === inUse);
  if (own === undefined || best.includes(own)) return `${said}.`;
  return `${said}, against ${smallAngleText(own.figures.leastToldDeg)} with ${TEST_KIND_WORDS[own.kind].name}.`;
}

/** What a right setting reads by chance, and whether the test stops sooner than that. */
export function chanceSentence(
  { mmPerDeg, leastToldDeg }: TestPieceFigures,
  { stopWhenMm }: TestCuts,
  display: Display,
): string {
  const chanceMm = leastToldDeg * Math.abs(mmPerDeg);
  const text = (mm: number): string => lengthText(mm, display, { uncertaintyMm: chanceMm / 10 });
  const said = `Even a right setting reads up to ${text(chanceMm)} by chance, 19 times in 20`;
  // Below half of it, one standard deviation, most right settings are sent on to another round.
  if (stopWhenMm >= chanceMm / 2) return `${said}.`;
  return `${said}; to go on until it reads ${givenLengthText(stopWhenMm, display)} is to chase chance.`;
}
