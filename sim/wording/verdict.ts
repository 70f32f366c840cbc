/** Which method to use, in sentences that never claim more than the simulated rings show. */
import type { Project } from '../project/document';
import type { MethodResult } from '../run/prediction';
import type { Share } from '../statistics/estimates';
import { countText, gapText, listText, notClosingText, piecesText, shareText, shareWithInterval } from './figures';
import { SOURCE_WORDS } from './sources';
import { costText, showGapP95Text } from './tables';

/** The chance that a piece made by method `first` has the smaller worst gap than one made by method `second`. */
export interface AheadPair {
  first: string;
  second: string;
  firstAhead: Share;
}

export interface Recommendation {
  /** The answer in one sentence. */
  headline: string;
  /** What it rests on and hinges on, a sentence each. */
  because: string[];
}

const quoted = (name: string): string => `“${name}”`;

/** Neither is ahead for certain, or by so little that it reads "50 of 100". */
function isEven({ value, low, high }: Share): boolean {
  return (low <= 0.5 && high >= 0.5) || Math.round(100 * value) === 50;
}

/** "“Fixed stop”: 83 in 100 pieces come out good enough." */
export function yieldSentence(name: string, share: Share): string {
  return `${quoted(name)}: ${piecesText(share, 'comes out good enough', 'come out good enough')}.`;
}

/** "“Marked line”: about 2 in 1,000 (1 to 9) pieces will not close." */
export function willNotCloseSentence(name: string, share: Share): string {
  return `${quoted(name)}: ${notClosingText(share)}.`;
}

/** "Of two pieces, one made each way, that of “Fixed stop” is the tighter in 71 of 100 pairs." */
export function aheadSentence({ first, second, firstAhead }: AheadPair): string {
  const { value, low, high } = firstAhead;
  if (isEven({ value, low, high })) {
    return `Of two pieces, one by ${quoted(first)} and one by ${quoted(second)}, either is as likely to be the tighter.`;
  }
  const [ahead, behind, chance] = value > 0.5 ? [first, second, value] : [second, first, 1 - value];
  const pairs = chance > 0.995 ? 'nearly every pair' : `${Math.round(100 * chance)} of 100 pairs`;
  return `Of two pieces, one made each way, that of ${quoted(ahead)} is tighter than that of ${quoted(behind)} in ${pairs}.`;
}

const yieldOf = (result: MethodResult): Share => result.prediction.yield;
const nameOf = (result: MethodResult): string => quoted(result.prediction.name);

/** Best chance first; among equal chances the smaller gap. */
function byMerit(a: MethodResult, b: MethodResult): number {
  const difference = yieldOf(b).value - yieldOf(a).value;
  return difference !== 0 ? difference : a.prediction.showGapMm.p95 - b.prediction.showGapMm.p95;
}

/** The results in the order of the methods' merit: best chance, then smallest gap. */
export function rankedByMerit(results: readonly MethodResult[]): MethodResult[] {
  return [...results].sort(byMerit);
}

/**
 * The methods' results, in any order, weighed against each other. `pairs` may be empty; those between the methods named
 * are used. Methods whose intervals overlap are never ranked by their chance of success.
 */
export function recommendation(
  project: Project,
  results: readonly MethodResult[],
  pairs: readonly AheadPair[],
): Recommendation {
  const ranked = rankedByMerit(results);
  const [leader, ...others] = ranked;
  if (leader === undefined) return { headline: 'No method is computed yet.', because: [] };
  const tied = others.filter((other) => yieldOf(other).high >= yieldOf(leader).low);
  const because = [...restsOn(project, leader, tied, others, pairs), ...costSentences(ranked)];
  for (const result of ranked) {
    const { name, willNotClose } = result.prediction;
    if (willNotClose.value > 0) because.push(willNotCloseSentence(name, willNotClose));
  }
  because.push(...hingesOn(project, leader));
  return { headline: headline(leader, tied, others), because };
}

function headline(leader: MethodResult, tied: readonly MethodResult[], others: readonly MethodResult[]): string {
  const chance = yieldOf(leader);
  const rings = countText(leader.prediction.trials);
  if (chance.value <= 0) {
    const who = others.length === 0 ? `${nameOf(leader)} gave no` : `None of the ${others.length + 1} methods gave a`;
    return `${who} good piece in ${rings} rings: change the methods or the limits.`;
  }
  if (others.length === 0) return yieldSentence(leader.prediction.name, chance);
  if (tied.length > 0) {
    const names = listText([leader, ...tied].map(nameOf));
    return `${names} cannot be told apart by ${rings} rings each: ${shareWithInterval(chance)} for the first.`;
  }
  const [next] = others;
  const against = next === undefined ? '' : `, against ${shareText(yieldOf(next))} for the next best, ${nameOf(next)}`;
  return `Use ${nameOf(leader)}: ${piecesText(chance, 'comes out good enough', 'come out good enough')}${against}.`;
}

function restsOn(
  project: Project,
  leader: MethodResult,
  tied: readonly MethodResult[],
  others: readonly MethodResult[],
  pairs: readonly AheadPair[],
): string[] {
  const said: string[] = [];
  const [next] = others;
  if (tied.length > 0 && yieldOf(leader).value > 0) {
    said.push('Choose between these by time, cost and the gap they leave, or simulate more rings.');
  }
  if (tied.length === 0 && yieldOf(leader).value > 0 && yieldOf(leader).high < 0.5) {
    said.push('Even so, more pieces fail than succeed.');
  }
  if (!mostlyCloses(leader)) return said;
  said.push(`With ${nameOf(leader)}, ${gapUnder(leader, project)}.`);
  if (next !== undefined) {
    const names = [leader.prediction.name, next.prediction.name];
    const pair = pairs.find(({ first, second }) => names.includes(first) && names.includes(second));
    if (pair !== undefined && mostlyCloses(next) && !isEven(pair.firstAhead)) said.push(aheadSentence(pair));
  }
  return said;
}

/** Of rings that will not close, gaps are neither told nor compared. */
export function mostlyCloses({ prediction }: MethodResult): boolean {
  return prediction.willNotClose.value <= 0.5;
}

/** "95 of 100 pieces show no gap over 0.12 mm". */
function gapUnder(result: MethodResult, project: Project): string {
  const gap = showGapP95Text(result, project.display);
  if (gap.startsWith('over')) return `more than 5 of 100 pieces show a gap ${gap}`;
  return `95 of 100 pieces show no gap over ${gap}`;
}

/** Says which method is cheapest only where its interval stays below all the others'. */
function costSentences(ranked: readonly MethodResult[]): string[] {
  const priced = ranked.filter((result) => result.prediction.cost.high !== null && result.prediction.cost.low !== null);
  const costLow = (result: MethodResult): number => result.prediction.cost.low ?? 0;
  const costHigh = (result: MethodResult): number => result.prediction.cost.high ?? Number.POSITIVE_INFINITY;
  const [cheapest, ...rest] = [...priced].sort((a, b) => costHigh(a) - costHigh(b));
  if (cheapest === undefined || ranked.length < 2 || costHigh(cheapest) <= 0) return [];
  const lost = ranked.filter((result) => !priced.includes(result));
  const said = lost.map(
    (result) => `${nameOf(result)} gives fewer than 1 good piece in 1,000, so it has no cost for one.`,
  );
  const rivals = rest.filter((result) => costLow(result) <= costHigh(cheapest));
  if (rivals.length > 0) {
    said.push(`By cost ${listText([cheapest, ...rivals].map(nameOf))} cannot be told apart.`);
  } else {
    said.push(`${nameOf(cheapest)} costs least for a good piece: ${costText(cheapest)}.`);
  }
  return said;
}

/** How many take the insert, where its size is what stands in the way: only rings that close can tell. */
function insertText(result: MethodResult): string | null {
  const { insertFits, willNotClose } = result.prediction;
  const closing = 1 - willNotClose.value;
  if (!mostlyCloses(result) || insertFits.high >= 0.98 * closing) return null;
  const takes = ['takes the insert', 'take the insert'] as const;
  if (willNotClose.value <= 0) return piecesText(insertFits, ...takes);
  const [value, low, high] = [insertFits.value, insertFits.low, insertFits.high].map((part) => part / closing);
  return `of the pieces that close ${piecesText({ value: value!, low: low!, high: high! }, ...takes).replace(/ pieces? /, ' ')}`;
}

/** What would change the answer: the insert when it is tight, and the largest source when a budget was made. */
function hingesOn(project: Project, leader: MethodResult): string[] {
  const said: string[] = [];
  const { budget } = leader.prediction;
  const takes = project.piece.insert === undefined ? null : insertText(leader);
  if (takes !== null) said.push(`With ${nameOf(leader)}, ${takes}: a little more size would help.`);
  const largest = [...(budget ?? [])].sort((a, b) => b.varianceShare - a.varianceShare)[0];
  if (largest !== undefined && largest.varianceShare > 0) {
    const source = SOURCE_WORDS[largest.source].label.toLowerCase();
    const without = gapText(largest.showGapP95WithoutMm, project.display);
    said.push(`It hinges on the ${source}: were that perfect, 95 of 100 pieces would show no gap over ${without}.`);
  }
  return said;
}
