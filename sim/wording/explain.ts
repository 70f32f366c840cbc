/** The client's sheet in words: for somebody who has never cut a mitre, and never more than the simulated rings show. */

import { ARM_LENGTH_MM, seenGapMm } from '../decide/sight';
import { ringGeometry } from '../geometry/ring';
import { NO_GAP_MM } from '../geometry/thresholds';
import type { Piece, Project } from '../project/document';
import type { MethodResult } from '../run/prediction';
import { ASSUMED_AIR, moistureChange, seasonForecast } from '../season/forecast';
import { countAtMost } from '../statistics/ecdf';
import { PROGRAM_VERSION } from '../version';
import {
  aboutLengthText,
  aboutOfHundredText,
  angleText,
  capital,
  countText,
  countWord,
  type Display,
  gapText,
  limitInSentence,
  listText,
} from './figures';
import { rankedByMerit } from './verdict';

/** "Twelve pieces of oak, standing upright: 280 mm across, 140 mm high and 15 mm thick." */
export function pieceSentence({ piece, stock, display }: Project): string {
  const { sides, slopeDeg, heightMm, thicknessMm, insert } = piece;
  const length = (mm: number): string => aboutLengthText(mm, display);
  const { outsideFlatsMm, clearOpeningNarrowMm } = ringGeometry(piece);
  const wood = isNamed(stock.wood) ? ` of ${stock.wood.trim()}` : '';
  const pieces = `${capital(countWord(sides))} pieces${wood}`;
  const opening = length(clearOpeningNarrowMm);
  const inside = insert === undefined ? '' : `, for something ${length(insert.diameterMm)} wide`;
  if (slopeDeg === 90) {
    const section = `${length(heightMm)} wide and ${length(thicknessMm)} thick`;
    return `${pieces}, laid flat as a frame with an opening ${opening} across${inside}; the wood is ${section}.`;
  }
  const stance = slopeDeg === 0 ? 'standing upright' : `leaning ${angleText(slopeDeg, 'decimal', 1)} from upright`;
  const high = slopeDeg === 0 ? 'high' : 'along the slope';
  const size = `${length(outsideFlatsMm)} across, ${length(heightMm)} ${high} and ${length(thicknessMm)} thick`;
  return `${pieces}, ${stance}: ${size}.${insert === undefined ? '' : ` The opening is ${opening} across${inside}.`}`;
}

/** What a piece of this shape is called, more than one. */
export const ringsOf = ({ slopeDeg }: Piece): string => (slopeDeg === 90 ? 'frames' : 'rings');

const isNamed = (wood: string): boolean => !['', 'other'].includes(wood.trim().toLowerCase());

/** The result the sheets are about: of the method the maker chose, else of the one that does best. */
export function explainedResult({ explain }: Project, results: readonly MethodResult[]): MethodResult | undefined {
  const chosen = results.find(({ prediction }) => prediction.name === explain?.method);
  return chosen ?? rankedByMerit(results)[0];
}

/** "43 of 50 within 0.15 mm". */
export function dotsText(gapsMm: readonly number[], limitMm: number, display: Display): string {
  return `${countAtMost(gapsMm, limitMm)} of ${gapsMm.length} within ${limitInSentence(limitMm, display)}`;
}

/** What to expect of a ring made so, the chance first, and a better way where most of them would fail. */
export function expectSentences(project: Project, result: MethodResult, results: readonly MethodResult[]): string[] {
  const { piece, limits, display } = project;
  const { prediction } = result;
  const limit = (mm: number): string => limitInSentence(mm, display);
  const asked = [
    `no gap that shows over ${limit(limits.showGapMm)}`,
    ...(piece.showFace === 'both' ? [] : [`no hidden gap over ${limit(limits.hiddenGapMm)}`]),
    ...(piece.insert === undefined ? [] : ['room for what goes inside']),
  ];
  const { willNotClose } = prediction;
  return [
    `${chanceSentence(project, result)} That means ${listText(asked)}.`,
    gapSentence(result, display),
    ...(willNotClose.value >= 0.0005
      ? [`${aboutOfHundredText(willNotClose.value, ringsOf(piece))} will not close at all.`]
      : []),
    ...betterWay(result, results),
  ];
}

function gapSentence(result: MethodResult, display: Display): string {
  const { p50 } = result.prediction.showGapMm;
  const p95 = gapText(result.prediction.showGapMm.p95, display);
  const wide = p95.startsWith('over') ? `in more than 5 of 100 it is ${p95}` : `in 95 of 100 it is under ${p95}`;
  if (p50 < NO_GAP_MM) return `Half of them show no gap to speak of; ${wide.replace('it', 'the widest gap')}.`;
  const middle = gapText(p50, display);
  return `In half of them the widest gap is ${middle.startsWith('over') ? middle : `under ${middle}`}; ${wide}.`;
}

/** "About 83 of 100 rings made this way come out good enough." */
export function chanceSentence({ piece }: Project, { prediction }: MethodResult): string {
  return `${aboutOfHundredText(prediction.yield.value, `${ringsOf(piece)} made this way`)} come out good enough.`;
}

/** How much better another way has to be before it is told. */
const WORTH_TELLING = 0.1;

/** Said only where more pieces fail than come out good. */
function betterWay({ prediction }: MethodResult, results: readonly MethodResult[]): string[] {
  if (prediction.yield.value >= 0.5) return [];
  const [best] = rankedByMerit(results);
  if (best === undefined || best.prediction.yield.value < prediction.yield.value + WORTH_TELLING) {
    return [
      'None of the ways worked out here does clearly better: a wider gap would have to be allowed, or another way found.',
    ];
  }
  const share = aboutOfHundredText(best.prediction.yield.value, 'pieces').toLowerCase();
  return [
    `More fail than succeed this way. Made another way, “${best.prediction.name}”, ${share} come out good enough.`,
  ];
}

/** How the gap compares with what an eye makes out. */
export function eyeSentences({ piece, display }: Project, { sample, prediction }: MethodResult): string[] {
  const seenMm = seenGapMm();
  const share = countAtMost(sample.showGapMm, seenMm) / prediction.trials;
  return [
    `At arm’s length, about ${aboutLengthText(ARM_LENGTH_MM, display)}, a good eye just makes out an opening of ` +
      `${gapText(seenMm, display)}; anything narrower looks like a line.`,
    `${aboutOfHundredText(share, ringsOf(piece))} stay under that at every joint.`,
  ];
}

/** How the limit compares with what a season's change of the air does to the joints, and what follows. */
export function seasonGapSentences(project: Project): string[] {
  const { display, limits, stock } = project;
  const { fromHumidityPercent: from, toHumidityPercent: to } = ASSUMED_AIR;
  const { sawings, isStandIn } = seasonForecast(project, moistureChange(ASSUMED_AIR).points);
  const gapsMm = sawings.map(({ change }) => Math.max(change.outsideGapMm, change.insideGapMm));
  const air =
    'Wood moves with the air. Indoors, between a heated winter room and a damp summer ' +
    `(${from} % and ${to} % humidity),`;
  const [least, most] = [Math.min(...gapsMm), Math.max(...gapsMm)];
  const outdoors = 'Out of doors wood moves more than that.';
  if (most < NO_GAP_MM) return [`${air} these joints stay as they are.`, outdoors];
  const [low, high] = [gapText(least, display), gapText(most, display)];
  const either = least < NO_GAP_MM ? `not at all or by up to ${high}` : `by up to ${low} or ${high}`;
  const by = low === high ? `by up to ${high}` : `${either}, depending on how the boards were sawn from the log`;
  const unknown = isStandIn
    ? [`How much ${stock.wood.trim()} moves is not known here, so a middling hardwood stands for it.`]
    : [];
  const allowed = limitInSentence(limits.showGapMm, display);
  return [
    `${air} each joint, were it free, would open ${by}.`,
    ...unknown,
    most > limits.showGapMm
      ? `That can be more than the ${allowed} allowed: a hairline may open and close again with the seasons, however well the joints are cut.`
      : `That is within the ${allowed} allowed.`,
    outdoors,
  ];
}

/** Rings are counted out of the smallest of these that shows every kind there is. */
const COUNTED = [100, 1000, 10_000];

/** What is left to be put right or made again. */
export function remainsSentences({ piece, limits, display }: Project, { grades, prediction }: MethodResult): string[] {
  const counts = [grades.good, grades.rework, grades.scrap];
  const rarest = Math.min(...counts.filter((count) => count > 0)) / prediction.trials;
  const outOf = COUNTED.find((of) => of * rarest >= 1) ?? 10_000;
  const [good, rework, scrap] = apportioned(counts, outOf);
  const say = (count = 0): string => (count === 0 ? 'none' : countText(count));
  const remedy = `no gap over ${limitInSentence(limits.remedyGapMm, display)}`;
  return [
    `Of ${countText(outOf)} such ${ringsOf(piece)} about ${say(good)} ${good === 1 ? 'is' : 'are'} good enough as glued, ` +
      `${say(rework)} can be put right afterwards (${remedy}), and ${say(scrap)} must be made again.`,
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
