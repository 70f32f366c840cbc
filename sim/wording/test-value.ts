/** Whether the test cuts that a method asks for are worth it, never claiming more than the simulated jobs show. */
import type { RoundsValue, TestValue } from '../decide/test-value';
import type { Project } from '../project/document';
import { moneyText, piecesText, shareWithInterval, timeText } from './figures';
import { pieceCostText, type TextTable } from './tables';
import { TEST_KIND_WORDS } from './test-pieces';

export interface TestAnswer {
  /** The answer in one sentence, for the rounds the method asks for; without any, for those that cost least. */
  headline: string;
  /** What it rests on, a sentence each. */
  because: string[];
}

const COUNT_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "one round", "up to two rounds": whoever finds the setting good enough stops earlier. */
export function roundsText(maxRounds: number): string {
  const count = COUNT_WORDS[maxRounds] ?? `${maxRounds}`;
  if (maxRounds === 0) return 'no rounds';
  return maxRounds === 1 ? 'one round' : `up to ${count} rounds`;
}

/** Rounds that the method asks for; 0 without test cuts. */
export function roundsAskedFor(project: Project, methodIndex: number): number {
  const test = project.methods[methodIndex]?.test;
  return test === undefined || test.kind === 'none' ? 0 : test.maxRounds;
}

const costOf = ({ cost }: RoundsValue): number => cost.perGoodPiece ?? Number.POSITIVE_INFINITY;

function cheapestOf(rounds: readonly RoundsValue[]): RoundsValue | undefined {
  return rounds.reduce<RoundsValue | undefined>(
    (least, r) => (least === undefined || costOf(r) < costOf(least) ? r : least),
    undefined,
  );
}

/** The extra cost counts with its whole interval. */
const saves = ({ extraCost }: RoundsValue): boolean => extraCost.high < 0;
const costsMore = ({ extraCost }: RoundsValue): boolean => extraCost.low > 0;

const isFree = ({ cost: { perGoodPiece, high } }: RoundsValue): boolean => perGoodPiece === 0 && high === 0;

/** "78 in 100 jobs come out cheaper". */
function paysText({ pays }: RoundsValue): string {
  return piecesText(pays, 'comes out cheaper', 'come out cheaper', { one: 'job', many: 'jobs' });
}

/** Money a piece, from the extra cost of a whole job, no finer than it is known. */
function perPieceText({ extraCost: { value, low, high } }: RoundsValue, batch: number): string {
  return moneyText(Math.abs(value / batch), (high - low) / 2 / batch);
}

interface Weighed {
  without: RoundsValue;
  /** The rounds asked for, or the cheapest where none are. */
  own: RoundsValue;
  isAsked: boolean;
  cheapest: RoundsValue;
  testPiece: string;
  batch: number;
}

export function testAnswer(value: TestValue, project: Project, methodIndex: number): TestAnswer {
  const [without, ...tested] = value.rounds;
  const cheapest = cheapestOf(tested);
  const asked = roundsAskedFor(project, methodIndex);
  const own = asked === 0 ? cheapest : tested.find(({ maxRounds }) => maxRounds === asked);
  if (without === undefined || cheapest === undefined || own === undefined) {
    return { headline: 'It is not known yet whether test cuts are worth it.', because: [] };
  }
  const weighed: Weighed = {
    without,
    own,
    isAsked: asked > 0,
    cheapest,
    testPiece: TEST_KIND_WORDS[value.kind].name,
    batch: project.costs.batch,
  };
  return { headline: headline(weighed), because: because(weighed) };
}

const FEW = 'fewer than 1 piece in 1,000 comes out good';

function headline(weighed: Weighed): string {
  const { without, own, isAsked, cheapest, testPiece, batch } = weighed;
  const way = `${roundsText(own.maxRounds)} with ${testPiece}`;
  if (without.cost.perGoodPiece === null) {
    if (own.cost.perGoodPiece === null) return `No: with test cuts as without, ${FEW}. Change the method first.`;
    return `Yes: without test cuts ${FEW}; with ${way} a good piece costs ${pieceCostText(own.cost)}.`;
  }
  if (own.cost.perGoodPiece === null) return `No: with ${way} ${FEW}.`;
  if (isFree(without) && isFree(own)) return headlineByYield(weighed, way);
  const one = own.maxRounds === 1;
  const amount = `about ${perPieceText(own, batch)} a piece`;
  if (saves(own)) return `Yes: ${way} ${verb(isAsked, one, 'save')} ${amount} on average; ${paysText(own)}.`;
  const better = isAsked && cheapest !== own && saves(cheapest);
  const instead = better
    ? `; ${roundsText(cheapest.maxRounds)} would save about ${perPieceText(cheapest, batch)}`
    : `; ${paysText(own)}`;
  if (costsMore(own)) {
    return `${better ? 'Not so many' : 'No'}: ${way} ${verb(isAsked, one, 'cost')} ${amount} more than ${one ? 'it saves' : 'they save'}${instead}.`;
  }
  return `It comes to the same: ${way} ${isAsked ? 'cannot' : 'could not'} be told from no test by cost${instead}.`;
}

function verb(isAsked: boolean, one: boolean, plain: string): string {
  if (!isAsked) return `would ${plain}`;
  return one ? `${plain}s` : plain;
}

/** Where nothing costs anything only the pieces themselves can decide. */
function headlineByYield({ without, own }: Weighed, way: string): string {
  const chances = `${goodText(own)} with ${way}, ${shareWithInterval(without.yield)} without`;
  if (own.yield.low > without.yield.high) return `Yes, while wood and time are counted as free: ${chances}.`;
  if (own.yield.high < without.yield.low) return `No: ${chances}.`;
  return `It comes to the same: ${chances}.`;
}

const goodText = ({ yield: good }: RoundsValue): string =>
  piecesText(good, 'comes out good enough', 'come out good enough');

function because({ without, own, isAsked, cheapest, batch }: Weighed): string[] {
  const rounds = roundsText(own.maxRounds);
  const said = [
    `Without test cuts ${goodText(without)}; with ${rounds} ${goodText(own)}.`,
    ...costSentences(without, own),
  ];
  if (own.maxRounds > 1) {
    said.push(`A set-up takes ${own.cost.testRounds.toFixed(1)} rounds on average: whoever reads little enough stops.`);
  }
  if (isAsked && cheapest !== own && cheapest.cost.perGoodPiece !== null && !isFree(own))
    said.push(cheapestText(own, cheapest));
  if (!saves(own) && own.yield.low > without.yield.high && !isFree(own)) {
    const now = batch === 1 ? 'one is' : `${batch} are`;
    said.push(`The more pieces are made at one setting, the less a test costs each; ${now} wanted now.`);
  }
  return said;
}

/** Of what has a cost; where nothing has, the answer itself says why. */
function costSentences(without: RoundsValue, own: RoundsValue): string[] {
  const rounds = roundsText(own.maxRounds);
  const isPriced = ({ cost }: RoundsValue): boolean => cost.perGoodPiece !== null;
  if (isPriced(without) && isPriced(own)) {
    return [
      `A good piece costs ${pieceCostText(without.cost)} without test cuts and ${pieceCostText(own.cost)} with ${rounds}.`,
    ];
  }
  if (isPriced(own))
    return [`A good piece costs ${pieceCostText(own.cost)} with ${rounds}; without, too few to have a cost.`];
  if (isPriced(without)) {
    return [
      `A good piece costs ${pieceCostText(without.cost)} without test cuts; with ${rounds}, too few to have a cost.`,
    ];
  }
  return [];
}

/** The number of rounds that costs least among those with a test. */
function cheapestText(own: RoundsValue, cheapest: RoundsValue): string {
  const name = roundsText(cheapest.maxRounds);
  const cost = pieceCostText(cheapest.cost);
  const isTold = own.cost.low === null || (cheapest.cost.high !== null && cheapest.cost.high < own.cost.low);
  if (isTold)
    return `If there is a test at all, ${name} ${cheapest.maxRounds === 1 ? 'is' : 'are'} cheapest: ${cost} for a good piece.`;
  return `Between this and ${name} cost does not decide.`;
}

/** One row for each number of rounds. The extra cost is that of a whole job, on the same luck with and without. */
export function testValueTable({ rounds }: TestValue): TextTable {
  return {
    head: [
      'Rounds, at most',
      'Made on average',
      'Good enough',
      'Cost of a good piece',
      'Time for a good piece',
      'More for a job than untested',
      'Jobs that come out cheaper',
    ],
    rows: rounds.map(({ maxRounds, yield: good, cost, minutesInterval, extraCost, pays }) => {
      const isTested = maxRounds > 0;
      const { value, low, high } = extraCost;
      const [more, least, most] = [value, low, high].map((amount) => moneyText(amount, (high - low) / 2));
      return [
        isTested ? `${maxRounds}` : 'none',
        isTested ? cost.testRounds.toFixed(1) : '–',
        shareWithInterval(good),
        pieceCostText(cost),
        timeText(cost.minutesPerPiece, minutesInterval),
        isTested ? `${more} (${least} to ${most})` : '–',
        isTested ? shareWithInterval(pays) : '–',
      ];
    }),
  };
}
