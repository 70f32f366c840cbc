import { describe, expect, it } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { aheadSentence, recommendation, willNotCloseSentence, yieldSentence } from '../../../sim/wording/verdict';
import { resultLike, share } from './result-like';

const project = exampleProject();
const line = resultLike('Line', { yield: share(0.76, 0.75, 0.77) });
const stop = resultLike('Stop', { yield: share(0.83, 0.82, 0.84) });
const noCost = { perGoodPiece: null, low: null, high: null, minutesPerPiece: null, testRounds: 0 };

describe('sentences about one method', () => {
  it('tell its chance', () => {
    expect(yieldSentence('Stop', share(0.83, 0.82, 0.84))).toBe('“Stop”: 83 in 100 pieces come out good enough.');
    expect(yieldSentence('Stop', share(0, 0, 0.0038))).toBe(
      '“Stop”: no piece comes out good enough (at most 4 in 1,000).',
    );
  });

  it('tell what will not close', () => {
    expect(willNotCloseSentence('Stop', share(0.003, 0.001, 0.009))).toBe(
      '“Stop”: about 3 in 1,000 (1 to 9) pieces will not close.',
    );
  });
});

describe('where hardly a ring closes', () => {
  const hopeless = resultLike('Hopeless', {
    yield: share(0, 0, 0.0004),
    insertFits: share(0.004, 0.003, 0.006),
    willNotClose: share(0.995, 0.993, 0.996),
    showGapMm: { mean: 1, sd: 1, p50: 9, p90: 12, p95: 14, p99: 20 },
  });

  it('those that do are counted', () => {
    expect(willNotCloseSentence('Stop', share(0.995, 0.993, 0.996))).toBe(
      '“Stop”: only about 5 in 1,000 (4 to 7) pieces close.',
    );
    expect(willNotCloseSentence('Stop', share(1, 0.9996, 1))).toBe('“Stop”: no piece closes (at most 4 in 10,000).');
  });

  it('neither size nor gap is spoken of, nor which is the tighter', () => {
    const pairs = [{ first: 'Hopeless', second: 'Other', firstAhead: share(0.7, 0.69, 0.71) }];
    const { because } = recommendation(
      project,
      [hopeless, { ...hopeless, prediction: { ...hopeless.prediction, name: 'Other' } }],
      pairs,
    );
    expect(because.join(' ')).not.toMatch(/insert|gap|tighter/);
    expect(because).toContain('“Hopeless”: only about 5 in 1,000 (4 to 7) pieces close.');
  });

  it('the size is to blame only for rings that close', () => {
    const some = resultLike('Some', { insertFits: share(0.6, 0.59, 0.61), willNotClose: share(0.25, 0.24, 0.26) });
    expect(recommendation(project, [some], []).because).toContain(
      'With “Some”, of the pieces that close 80 in 100 take the insert: a little more size would help.',
    );
    const all = resultLike('All', { insertFits: share(0.75, 0.74, 0.76), willNotClose: share(0.25, 0.24, 0.26) });
    expect(recommendation(project, [all], []).because.join(' ')).not.toContain('insert');
  });
});

describe('sentences about two methods', () => {
  it('name the one that is ahead, whichever was named first', () => {
    const said = 'Of two pieces, one made each way, that of “Stop” is tighter than that of “Line” in 71 of 100 pairs.';
    expect(aheadSentence({ first: 'Stop', second: 'Line', firstAhead: share(0.71, 0.7, 0.72) })).toBe(said);
    expect(aheadSentence({ first: 'Line', second: 'Stop', firstAhead: share(0.29, 0.28, 0.3) })).toBe(said);
  });

  it('name none where chance could have it either way', () => {
    expect(aheadSentence({ first: 'Stop', second: 'Line', firstAhead: share(0.51, 0.49, 0.53) })).toBe(
      'Of two pieces, one by “Stop” and one by “Line”, either is as likely to be the tighter.',
    );
  });

  it('do not say 100 of 100', () => {
    expect(aheadSentence({ first: 'Stop', second: 'Line', firstAhead: share(0.999, 0.998, 1) })).toContain(
      'in nearly every pair',
    );
  });
});

describe('the recommendation', () => {
  it('names a clear leader, wherever it stands in the list', () => {
    for (const results of [
      [line, stop],
      [stop, line],
    ]) {
      expect(recommendation(project, results, []).headline).toBe(
        'Use “Stop”: 83 in 100 pieces come out good enough, against 76 in 100 for the next best, “Line”.',
      );
    }
  });

  it('tells methods apart only when their intervals do not overlap', () => {
    const near = resultLike('Near', { yield: share(0.825, 0.815, 0.835) });
    const { headline, because } = recommendation(project, [near, line, stop], []);
    expect(headline).toBe(
      '“Stop” and “Near” cannot be told apart by 10,000 rings each: 83 in 100 (82 to 84) for the first.',
    );
    expect(because[0]).toBe('Choose between these by time, cost and the gap they leave, or simulate more rings.');
  });

  it('touching intervals count as overlapping', () => {
    const touching = resultLike('Touching', { yield: share(0.81, 0.8, 0.82) });
    expect(recommendation(project, [stop, touching], []).headline).toContain('cannot be told apart');
  });

  it('says when no method gives a good piece, and never to use one', () => {
    const none = { yield: share(0, 0, 0.0004) };
    const { headline, because } = recommendation(project, [resultLike('A', none), resultLike('B', none)], []);
    expect(headline).toBe('None of the 2 methods gave a good piece in 10,000 rings: change the methods or the limits.');
    expect(because.join(' ')).not.toMatch(/Choose between|Use /);
    expect(recommendation(project, [resultLike('A', none)], []).headline).toBe(
      '“A” gave no good piece in 10,000 rings: change the methods or the limits.',
    );
  });

  it('warns of a leader with which more fail than succeed', () => {
    const poor = resultLike('Poor', { yield: share(0.2, 0.19, 0.21) });
    const worse = resultLike('Worse', { yield: share(0.1, 0.09, 0.11) });
    expect(recommendation(project, [poor, worse], []).because[0]).toBe('Even so, more pieces fail than succeed.');
    expect(recommendation(project, [stop, line], []).because.join(' ')).not.toContain('Even so');
  });

  it('names every method whose rings will not always close', () => {
    const open = resultLike('Open', { yield: share(0.2, 0.19, 0.21), willNotClose: share(0.41, 0.4, 0.42) });
    expect(recommendation(project, [stop, open], []).because).toContain('“Open”: 41 in 100 pieces will not close.');
  });

  it('tells the 95 % gap of the leader, and a gap over 2 mm without a number', () => {
    expect(recommendation(project, [stop], []).because[0]).toMatch(
      /^With “Stop”, 95 of 100 pieces show no gap over 0\.16\d? mm\.$/,
    );
    const gaping = resultLike('Wide', { showGapMm: { mean: 1, sd: 1, p50: 1, p90: 2, p95: 7.5, p99: 9 } });
    expect(recommendation(project, [gaping], []).because[0]).toBe(
      'With “Wide”, more than 5 of 100 pieces show a gap over 2 mm.',
    );
  });

  it('names the cheapest only when its cost stays below all the others', () => {
    const cheap = resultLike('Cheap', {
      cost: { perGoodPiece: 60, low: 58, high: 62, minutesPerPiece: 60, testRounds: 0 },
    });
    expect(recommendation(project, [stop, cheap], []).because).toContain(
      '“Cheap” costs least for a good piece: 60 (58 to 62).',
    );
    expect(recommendation(project, [stop, line], []).because).toContain(
      'By cost “Stop” and “Line” cannot be told apart.',
    );
    const never = resultLike('Never', { yield: share(0, 0, 0.0004), cost: noCost });
    expect(recommendation(project, [stop, never], []).because).toContain(
      '“Never” gives fewer than 1 good piece in 1,000, so it has no cost for one.',
    );
  });

  it('says nothing of cost where none was given', () => {
    const free = { cost: { perGoodPiece: 0, low: 0, high: 0, minutesPerPiece: 0, testRounds: 0 } };
    const { because } = recommendation(project, [resultLike('A', free), resultLike('B', free)], []);
    expect(because.join(' ')).not.toMatch(/costs least|By cost/);
  });

  it('uses the pair of the two best', () => {
    const third = resultLike('Third', { yield: share(0.5, 0.49, 0.51) });
    const pairs = [
      { first: 'Third', second: 'Stop', firstAhead: share(0.1, 0.09, 0.11) },
      { first: 'Line', second: 'Stop', firstAhead: share(0.29, 0.28, 0.3) },
    ];
    const said = recommendation(project, [third, line, stop], pairs).because;
    expect(said.filter((sentence) => sentence.startsWith('Of two pieces'))).toEqual([
      'Of two pieces, one made each way, that of “Stop” is tighter than that of “Line” in 71 of 100 pairs.',
    ]);
  });

  it('says what it hinges on when a budget was made, and when the insert is tight', () => {
    const budget = [
      { source: 'kerf' as const, varianceShare: 0.1, showGapP95WithoutMm: 0.16 },
      { source: 'tiltShared' as const, varianceShare: 0.9, showGapP95WithoutMm: 0.03 },
    ];
    const tight = resultLike('Tight', { budget, insertFits: share(0.9, 0.89, 0.91) });
    const { because } = recommendation(project, [tight], []);
    expect(because).toContain('With “Tight”, 90 in 100 pieces take the insert: a little more size would help.');
    expect(because).toContain(
      'It hinges on the tilt setting: were that perfect, 95 of 100 pieces would show no gap over 0.03 mm.',
    );
  });

  it('has an answer before anything is computed', () => {
    expect(recommendation(project, [], [])).toMatchObject({ headline: 'No method is computed yet.', because: [] });
  });
});

it('two methods that are tighter equally often support neither', () => {
  const [a, b] = [resultLike('A', { yield: share(0.9) }), resultLike('B', { yield: share(0.8) })];
  const said = (firstAhead: ReturnType<typeof share>) =>
    recommendation(exampleProject(), [a, b], [{ first: 'A', second: 'B', firstAhead }]).because.join(' ');
  expect(said(share(0.503, 0.501, 0.505))).not.toContain('Of two pieces');
  expect(said(share(0.51, 0.49, 0.53))).not.toContain('Of two pieces');
  expect(said(share(0.7, 0.69, 0.71))).toContain('Of two pieces');
});
