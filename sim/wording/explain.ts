/** The client's sheet in words: for somebody who has never cut a mitre, and never more than the simulated rings show. */

import { sharedError } from '../decide/shared-error';
import { ARM_LENGTH_MM, seenGapMm } from '../decide/sight';
import { ringGeometry } from '../geometry/ring';
import { NO_GAP_MM } from '../geometry/thresholds';
import type { Method, Project } from '../project/document';
import type { MethodPart } from '../project/preset';
import { nearestPreset } from '../project/presets';
import type { MethodResult } from '../run/prediction';
import { ASSUMED_AIR, moistureChange, seasonForecast } from '../season/forecast';
import { countAtMost } from '../statistics/ecdf';
import { wilson } from '../statistics/wilson';
import { PROGRAM_VERSION } from '../version';
import {
  angleText,
  capital,
  countText,
  type Display,
  gapText,
  lengthText,
  limitText,
  listText,
  notClosingText,
  piecesText,
} from './figures';
import { showGapP95Text } from './tables';
import { roundsText } from './test-value';
import { rankedByMerit } from './verdict';

const COUNT_WORDS = ['Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve'];

/** "Twelve staves of oak, upright, 280 mm over the outside flats, 140 mm high and 15 mm thick." */
export function pieceSentence({ piece, stock, display }: Project): string {
  const { sides, slopeDeg, heightMm, thicknessMm, insert } = piece;
  const length = (mm: number): string => lengthText(display === 'metric' ? Number(mm.toFixed(1)) : mm, display);
  const { outsideFlatsMm, clearOpeningNarrowMm } = ringGeometry(piece);
  const isFlat = slopeDeg === 90;
  const staves = isFlat ? 'members' : 'staves';
  const wood = stock.wood.trim() === '' || stock.wood === 'other' ? '' : ` of ${stock.wood}`;
  const stance = isFlat ? 'lying flat' : slopeDeg === 0 ? 'upright' : `leaning ${angleText(slopeDeg)} from upright`;
  const size = `${length(outsideFlatsMm)} over the outside flats`;
  const section = isFlat
    ? `${length(heightMm)} wide and ${length(thicknessMm)} thick`
    : `${length(heightMm)} high and ${length(thicknessMm)} thick`;
  const room =
    insert === undefined
      ? ''
      : ` The opening is ${length(clearOpeningNarrowMm)} across, for what measures ${length(insert.diameterMm)}.`;
  return `${COUNT_WORDS[sides - 3] ?? countText(sides)} ${staves}${wood}, ${stance}, ${size}, ${section}.${room}`;
}

/** A twentieth of a degree: finer than most scales on a saw are read. */
const SHOWN_ERROR_DEG = 0.05;
/** Office paper of 80 g/m²; common practice. */
const PAPER_MM = 0.1;

/** The result the sheets are about: of the method the maker chose, else of the one that does best. */
export function explainedResult({ explain }: Project, results: readonly MethodResult[]): MethodResult | undefined {
  const chosen = results.find(({ prediction }) => prediction.name === explain?.method);
  return chosen ?? rankedByMerit(results)[0];
}

/** Why a closed ring shows errors the way it does. */
export function whySentences({ piece, display }: Project): string[] {
  const { sides } = piece;
  const { setting, ringSumDeg, mouthMm, jointGapMm } = sharedError(
    ringGeometry(piece),
    piece.showFace,
    SHOWN_ERROR_DEG,
  );
  const paper = lengthText(PAPER_MM, display, { uncertaintyMm: 0.1 });
  const armMm = PAPER_MM / Math.tan((SHOWN_ERROR_DEG * Math.PI) / 180);
  const arm = lengthText(armMm, display, { uncertaintyMm: 5 });
  return [
    `A ring of ${sides} pieces has ${2 * sides} sawn faces, and their angles must add up to exactly 360°.`,
    `Whatever is wrong with the saw’s ${setting} is in every one of the ${2 * sides}: an error of ${angleText(SHOWN_ERROR_DEG)}, ` +
      `as much as a sheet of paper (${paper}) under the end of a block ${arm} long, adds up to ${angleText(Math.abs(ringSumDeg))} around the ring.`,
    `With all other joints pressed tight the last would stand open by ${openingText(mouthMm, display)}; ` +
      `pulled together, every one of the ${sides} joints takes its part, ${gapText(jointGapMm, display, NO_GAP_MM)}.`,
  ];
}

/** To a tenth of a millimetre, whatever its size: it is no gap yet, but a mouth before the ring is pulled together. */
function openingText(mm: number, display: Display): string {
  return lengthText(Math.abs(mm), display, { uncertaintyMm: 0.1 });
}

/** "43 of 50 within 0.15 mm". */
export function dotsText(gapsMm: readonly number[], limitMm: number, display: Display): string {
  return `${countAtMost(gapsMm, limitMm)} of ${gapsMm.length} within ${limitText(limitMm, display)}`;
}

/** What to expect of a ring made so, the chance first. */
export function expectSentences({ piece, limits, display }: Project, result: MethodResult): string[] {
  const { prediction } = result;
  const limit = (mm: number): string => gapText(mm, display);
  const asked = [
    `no gap that shows over ${limit(limits.showGapMm)}`,
    ...(piece.showFace === 'both' ? [] : [`no hidden one over ${limit(limits.hiddenGapMm)}`]),
    ...(piece.insert === undefined ? [] : ['room for what goes inside']),
  ];
  const p95 = showGapP95Text(result, display);
  const wide = p95.startsWith('over') ? `more than 5 of 100 show one ${p95}` : `95 of 100 show none over ${p95}`;
  return [
    `${chanceSentence(result)} That means ${listText(asked)}.`,
    `${middleText(prediction.showGapMm.p50, display)}; ${wide}.`,
    ...(prediction.willNotClose.value > 0 ? [`${capital(notClosingText(prediction.willNotClose, RINGS))}.`] : []),
  ];
}

function middleText(gapMm: number, display: Display): string {
  if (gapMm < NO_GAP_MM) return 'In the middle one of such rings no gap to speak of shows';
  return `In the middle one of such rings the widest gap that shows is ${gapText(gapMm, display)}`;
}

const RINGS = { one: 'ring', many: 'rings' };

/** "83 in 100 rings made this way come out good enough." */
export function chanceSentence({ prediction }: MethodResult): string {
  const [one, many] = ['made this way comes out good enough', 'made this way come out good enough'];
  return `${capital(piecesText(prediction.yield, one, many, RINGS))}.`;
}

/** How the saw is set, the work held, the width fixed and the ring closed, in the order of the work. */
export function makingSentences({ piece }: Project, method: Method, result: MethodResult): string[] {
  const explained = (part: MethodPart): string[] => {
    const preset = nearestPreset(method, part);
    return preset === null ? [] : [preset.explanation];
  };
  const isFlat = piece.slopeDeg === 90;
  const isTested = method.test.kind !== 'none' && method.test.maxRounds > 0;
  return [
    ...(isFlat ? [] : explained('tilt')),
    ...explained('guide'),
    ...explained('width'),
    ...(isTested ? [testSentence(method, result, isFlat), ...explained('test')] : []),
    ...explained('assembly'),
  ];
}

function testSentence({ test, tilt }: Method, { prediction }: MethodResult, isFlat: boolean): string {
  const rounds = `Before the piece itself, ${roundsText(test.maxRounds)} of test cuts put the saw right`;
  const beforeDeg = tilt.shape === 'uniform' ? tilt.sharedDeg / Math.sqrt(3) : tilt.sharedDeg;
  const afterDeg = prediction.tiltSharedAfterTestDeg.sd;
  if (isFlat || tilt.reset === 'everyCut' || !(afterDeg < beforeDeg)) return `${rounds}.`;
  const angle = (deg: number): string => angleText(deg, 'decimal', deg < 0.1 ? 3 : 2);
  return `${rounds}: the tilt error that all cuts share goes from typically ${angle(beforeDeg)} down to ${angle(afterDeg)}.`;
}

/** How the gap compares with what an eye makes out. */
export function eyeSentences({ display }: Project, { sample, prediction }: MethodResult): string[] {
  const seenMm = seenGapMm();
  const arm = lengthText(ARM_LENGTH_MM, display, { uncertaintyMm: 5 });
  const share = wilson(countAtMost(sample.showGapMm, seenMm), prediction.trials);
  return [
    `At arm’s length, ${arm}, a good eye tells apart what lies ${gapText(seenMm, display)} apart, one minute of arc; ` +
      'a narrower gap is a line and no opening.',
    `${capital(piecesText(share, 'stays under that everywhere', 'stay under that everywhere', RINGS))}.`,
  ];
}

/** How the gap compares with what a season's change of the air does to the joints. */
export function seasonGapSentences(project: Project, { sample, prediction }: MethodResult): string[] {
  const { display } = project;
  const { fromHumidityPercent: from, toHumidityPercent: to, temperatureC } = ASSUMED_AIR;
  const { sawings, wood, isStandIn } = seasonForecast(project, moistureChange(ASSUMED_AIR).points);
  const moves = sawings.map(({ sawing, change }) => {
    return { sawing, gapMm: Math.max(change.outsideGapMm, change.insideGapMm) };
  });
  const air =
    'Wood moves with the air: from a heated winter room to a humid summer ' +
    `(${from} % to ${to} % humidity at ${temperatureC} °C)`;
  const least = Math.min(...moves.map(({ gapMm }) => gapMm));
  if (Math.max(...moves.map(({ gapMm }) => gapMm)) < NO_GAP_MM) return [`${air} these joints stay as they are.`];
  const told = moves.map(({ sawing, gapMm }) => {
    const by = gapMm < NO_GAP_MM ? 'not at all' : `by up to ${gapText(gapMm, display)}`;
    return sawing === undefined ? by : `${by} (${sawing} boards)`;
  });
  const ring = isStandIn || wood.id === 'other' ? 'the ring' : `a ring of ${wood.label.toLowerCase()}`;
  const share = wilson(countAtMost(sample.showGapMm, least), prediction.trials);
  const wide = moves.length === 1 ? 'as wide as that' : 'as wide as the smaller of these';
  const shows = piecesText(share, `shows no gap ${wide}`, `show no gap ${wide}`, RINGS);
  return [
    `${air} each joint of ${ring}, were it free, would open ${told.join(' or ')}.`,
    ...(least < NO_GAP_MM ? [] : [`${capital(shows)}.`]),
  ];
}

/** Rings are counted out of the smallest of these that shows every kind there is. */
const COUNTED = [100, 1000, 10_000];

/** What is left to be put right or made again. */
export function remainsSentences({ limits, display }: Project, { grades, prediction }: MethodResult): string[] {
  const counts = [grades.good, grades.rework, grades.scrap];
  const rarest = Math.min(...counts.filter((count) => count > 0)) / prediction.trials;
  const outOf = COUNTED.find((of) => of * rarest >= 2) ?? 10_000;
  const [good, rework, scrap] = apportioned(counts, outOf);
  const be = (count = 0): string => `${count === 0 ? 'none' : countText(count)} ${count < 2 ? 'is' : 'are'}`;
  const remedy = `no gap over ${gapText(limits.remedyGapMm, display)}`;
  return [
    `Of ${countText(outOf)} such rings about ${be(good)} good as they come, ` +
      `${rework === 0 ? 'none' : countText(rework ?? 0)} can be put right afterwards (${remedy}) and ${be(scrap)} made again.`,
  ];
}

/** Whole numbers in the same proportions that add up to `total`, by the largest remainders. */
function apportioned(counts: readonly number[], total: number): number[] {
  const sum = counts.reduce((a, b) => a + b, 0);
  const exact = counts.map((count) => (count / sum) * total);
  const whole = exact.map(Math.floor);
  const left = total - whole.reduce((a, b) => a + b, 0);
  const order = exact.map((_, i) => i).sort((a, b) => exact[b]! - whole[b]! - (exact[a]! - whole[a]!));
  for (const i of order.slice(0, left)) whole[i]!++;
  return whole;
}

/** What the figures rest on, in small print. */
export function basisSentence({ run }: Project, { prediction }: MethodResult): string {
  return (
    `Worked out by Ringtrue ${PROGRAM_VERSION} from ${countText(prediction.trials)} simulated rings, seed ${run.seed}, ` +
    'for the errors of the tools as far as the maker knows them.'
  );
}

/** The maker's closing words, a paragraph each. */
export function closingParagraphs({ explain }: Project): string[] {
  return (explain?.closing ?? '')
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.trim())
    .filter((paragraph) => paragraph !== '');
}
