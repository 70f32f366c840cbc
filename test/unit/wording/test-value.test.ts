/** Whether test cuts are worth it, in a sentence that follows the figures. */
import { describe, expect, test } from 'vitest';
import type { RoundsValue, TestValue } from '../../../sim/decide/test-value';
import type { Project, TestKind } from '../../../sim/project/document';
import type { CostSummary } from '../../../sim/run/prediction';
import { roundsAskedFor, roundsText, testAnswer, testValueTable } from '../../../sim/wording/test-value';
import { projectWith } from '../../support/projects';
import { share } from './result-like';

const cost = (perGoodPiece: number | null, reach = 0.5): CostSummary => ({
  perGoodPiece,
  low: perGoodPiece === null ? null : perGoodPiece - reach,
  high: perGoodPiece === null ? null : perGoodPiece + reach,
  minutesPerPiece: perGoodPiece === null ? null : 75,
  testRounds: 0,
});

const around = (value: number, reach: number) => ({ value, low: value - reach, high: value + reach });

function rounds(maxRounds: number, figures: Partial<RoundsValue> = {}): RoundsValue {
  return {
    maxRounds,
    yield: share(0.85, 0.84, 0.86),
    cost: { ...cost(90), testRounds: 0.8 * maxRounds },
    minutesInterval: { low: 73, high: 77 },
    extraCost: around(-12, 1),
    pays: share(0.78, 0.74, 0.82),
    ...figures,
  };
}

const NONE = rounds(0, { yield: share(0.6, 0.59, 0.61), cost: cost(102), extraCost: around(0, 0), pays: share(0) });

function value(...tested: RoundsValue[]): TestValue {
  const [without, ...others] = [
    tested[0]?.maxRounds === 0 ? tested[0] : NONE,
    ...tested.filter((r) => r.maxRounds > 0),
  ];
  const all = [without!, ...others];
  const priced = all.filter((r) => r.cost.perGoodPiece !== null);
  const best = priced.sort((a, b) => a.cost.perGoodPiece! - b.cost.perGoodPiece!)[0];
  return {
    trials: 10_000,
    jobs: 500,
    kind: 'fullRing',
    reading: null,
    rounds: all,
    bestRounds: best?.maxRounds ?? null,
  };
}

const asking = (maxRounds: number, batch = 1, kind: TestKind = 'fullRing'): Project =>
  projectWith({ costs: { batch }, method: { test: { kind, maxRounds } } });

const headline = (project: Project, ...tested: RoundsValue[]) => testAnswer(value(...tested), project, 0).headline;

describe('the answer', () => {
  test('is yes where the job comes out cheaper beyond doubt', () => {
    expect(headline(asking(2), rounds(1), rounds(2))).toBe(
      'Yes: up to two rounds with a whole ring save about 12 a piece on average; 78 in 100 jobs come out cheaper.',
    );
    expect(headline(asking(1), rounds(1), rounds(2))).toMatch(
      /^Yes: one round with a whole ring saves about 12 a piece/,
    );
  });

  test('tells the job’s saving by the piece, no finer than it is known', () => {
    expect(headline(asking(1, 4), rounds(1))).toMatch(/ saves about 3\.0 a piece on average;/);
    expect(headline(asking(1, 4), rounds(1, { extraCost: around(-12, 0.2) }))).toMatch(
      / saves about 3\.00 a piece on average;/,
    );
  });

  test('is no where it comes out dearer', () => {
    const dear = { extraCost: around(25, 1), cost: cost(127), pays: share(0, 0, 0.0076) };
    expect(headline(asking(2), rounds(1, dear), rounds(2, dear))).toBe(
      'No: up to two rounds with a whole ring cost about 25 a piece more than they save; no job comes out cheaper (at most 8 in 1,000).',
    );
  });

  test('says when fewer rounds would pay though so many do not', () => {
    const dear = { extraCost: around(5, 1), cost: cost(107) };
    expect(headline(asking(3), rounds(1), rounds(2), rounds(3, dear))).toBe(
      'Not so many: up to three rounds with a whole ring cost about 5 a piece more than they save; one round would save about 12.',
    );
  });

  test('is neither where the interval takes in nothing', () => {
    expect(headline(asking(1), rounds(1, { extraCost: around(0.4, 1) }))).toBe(
      'It comes to the same: one round with a whole ring cannot be told from no test by cost; 78 in 100 jobs come out cheaper.',
    );
  });

  test('gives no cost to what has none', () => {
    const hopeless = { cost: cost(null), yield: share(0, 0, 0.0004) };
    const costs = (...tested: RoundsValue[]) =>
      testAnswer(value(...tested), asking(2), 0).because.filter((said) => /cost/.test(said));
    expect(costs(rounds(0, hopeless), rounds(1, hopeless), rounds(2, hopeless))).toEqual([]);
    expect(costs(rounds(0, hopeless), rounds(2))).toEqual([
      'A good piece costs 90.0 (89.5 to 90.5) with up to two rounds; without, too few to have a cost.',
    ]);
    expect(costs(rounds(2, hopeless))).toEqual([
      'A good piece costs 102.0 (101.5 to 102.5) without test cuts; with up to two rounds, too few to have a cost.',
    ]);
  });

  test('weighs the cheapest rounds for a method that asks for none', () => {
    const dearer = rounds(2, { cost: cost(95) });
    expect(headline(asking(0), rounds(1), dearer)).toMatch(/^Yes: one round with a whole ring would save about 12 /);
    expect(headline(asking(3, 1, 'none'), rounds(1), dearer)).toMatch(/^Yes: one round .* would save about 12 /);
  });

  test('is by hopelessness where a good piece is never made', () => {
    const hopeless = { cost: cost(null) };
    expect(headline(asking(1), rounds(0, hopeless), rounds(1, hopeless))).toBe(
      'No: with test cuts as without, fewer than 1 piece in 1,000 comes out good. Change the method first.',
    );
    expect(headline(asking(1), rounds(0, hopeless), rounds(1))).toBe(
      'Yes: without test cuts fewer than 1 piece in 1,000 comes out good; with one round with a whole ring a good piece costs 90.0 (89.5 to 90.5).',
    );
    expect(headline(asking(1), rounds(1, hopeless))).toMatch(/^No: with one round with a whole ring fewer than/);
  });

  test('is by the pieces alone where nothing costs anything', () => {
    const free = { cost: cost(0, 0), extraCost: around(0, 0), pays: share(0) };
    const none = rounds(0, { ...free, yield: share(0.6, 0.59, 0.61) });
    expect(headline(asking(1), none, rounds(1, free))).toBe(
      'Yes, while wood and time are counted as free: 85 in 100 pieces come out good enough with one round with a whole ring, 60 in 100 (59 to 61) without.',
    );
    expect(headline(asking(1), none, rounds(1, { ...free, yield: none.yield }))).toMatch(/^It comes to the same: /);
    expect(headline(asking(1), none, rounds(1, { ...free, yield: share(0.5, 0.49, 0.51) }))).toMatch(/^No: /);
  });

  test('waits for figures', () => {
    expect(headline(asking(2), rounds(1))).toBe('It is not known yet whether test cuts are worth it.');
    expect(testAnswer(value(), asking(1), 0).because).toEqual([]);
  });
});

describe('what it rests on', () => {
  const because = (project: Project, ...tested: RoundsValue[]) => testAnswer(value(...tested), project, 0).because;

  test('is the pieces, the costs and the rounds made', () => {
    expect(because(asking(2), rounds(1, { cost: cost(95) }), rounds(2))).toEqual([
      'Without test cuts 60 in 100 pieces come out good enough; with up to two rounds 85 in 100 pieces come out good enough.',
      'A good piece costs 102.0 (101.5 to 102.5) without test cuts and 90.0 (89.5 to 90.5) with up to two rounds.',
      'A set-up takes 1.6 rounds on average: whoever reads little enough stops.',
    ]);
  });

  test('names fewer rounds that cost less, where cost tells them apart', () => {
    expect(because(asking(2), rounds(1, { cost: cost(80) }), rounds(2))).toContain(
      'If there is a test at all, one round is cheapest: 80.0 (79.5 to 80.5) for a good piece.',
    );
    expect(because(asking(2), rounds(1, { cost: cost(89.4) }), rounds(2))).toContain(
      'Between this and one round cost does not decide.',
    );
  });

  test('points to the batch where the test is good for the pieces and yet too dear', () => {
    const dear = rounds(1, { extraCost: around(5, 1) });
    expect(because(asking(1), dear).at(-1)).toBe(
      'The more pieces are made at one setting, the less a test costs each; one is wanted now.',
    );
    expect(because(asking(1, 6), dear).at(-1)).toMatch(/; 6 are wanted now\.$/);
    expect(because(asking(1), rounds(1, { extraCost: around(5, 1), yield: NONE.yield })).join()).not.toMatch(
      /batch|wanted/,
    );
  });
});

test('rounds asked for are none without a test piece', () => {
  expect([asking(2), asking(2, 1, 'none'), asking(0)].map((project) => roundsAskedFor(project, 0))).toEqual([2, 0, 0]);
  expect([0, 1, 2, 10, 11].map(roundsText)).toEqual([
    'no rounds',
    'one round',
    'up to two rounds',
    'up to ten rounds',
    'up to 11 rounds',
  ]);
});

test('the table has a row for each number of rounds, with the costs of a job beside those of a piece', () => {
  const { head, rows } = testValueTable(value(rounds(1), rounds(2, { cost: cost(null) })));
  expect(head).toHaveLength(7);
  expect(rows).toEqual([
    ['none', '–', '60 in 100 (59 to 61)', '102.0 (101.5 to 102.5)', '75 min (73 to 77)', '–', '–'],
    [
      '1',
      '0.8',
      '85 in 100 (84 to 86)',
      '90.0 (89.5 to 90.5)',
      '75 min (73 to 77)',
      '-12 (-13 to -11)',
      '78 in 100 (74 to 82)',
    ],
    ['2', '0.0', '85 in 100 (84 to 86)', 'fewer than 1 good in 1,000', '–', '-12 (-13 to -11)', '78 in 100 (74 to 82)'],
  ]);
});
