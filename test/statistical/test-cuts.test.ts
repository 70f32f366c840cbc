/** What test cuts leave of the shared tilt error, against closed forms. Upright test piece, read as a full ring. */
import { describe, expect, test } from 'vitest';
import { RADIANS_PER_DEGREE } from '../../sim/geometry/ring';
import type { TestCuts } from '../../sim/project/document';
import { runBlock } from '../../sim/run/block';
import { finish } from '../../sim/run/block-loop';
import type { BlockResult } from '../../sim/run/block-result';
import { methodPlan } from '../../sim/run/plan';
import { runMethod } from '../../sim/run/run-method';
import { Moments } from '../../sim/statistics/moments';
import { normalCdf } from '../../sim/statistics/normal-distribution';
import { countDeviation } from '../support/kolmogorov';
import { type MethodChanges, type ProjectChanges, projectWith } from '../support/projects';

const RINGS = 10_000;
const N = 8;
/** By hand: corner radius of eight staves of 100 mm. */
const CORNER_MM = 50 / Math.sin(Math.PI / N);
/** Reading per degree, by hand: 2N faces at the lever of the corners. */
const S = 2 * N * CORNER_MM * RADIANS_PER_DEGREE;

/** One round, always dialled. */
const ONE_ROUND: Partial<TestCuts> = { kind: 'fullRing', maxRounds: 1, stopWhenMm: 0, dialDeg: 0, dialShare: 0 };

function rings(method: MethodChanges, test: Partial<TestCuts>, changes: ProjectChanges = {}, seed = 9): BlockResult {
  const project = projectWith({
    run: { rule: 'touch' },
    ...changes,
    method: { ...method, test: { ...ONE_ROUND, ...test } },
  });
  return runBlock(methodPlan(project, 0), seed, 0, RINGS);
}

function left(result: BlockResult): { meanDeg: number; sdDeg: number } {
  const { mean, sd } = new Moments().add(result.tiltRad);
  return { meanDeg: mean / RADIANS_PER_DEGREE, sdDeg: sd / RADIANS_PER_DEGREE };
}

/** Four standard errors of a normal's standard deviation and mean: 1 in 16,000 seeds each; a tenth more would fail. */
function expectLeft(result: BlockResult, sdDeg: number, meanDeg = 0): void {
  const found = left(result);
  const error = sdDeg / Math.sqrt(2 * RINGS);
  expect(Math.abs(found.sdDeg - sdDeg)).toBeLessThan(4 * error);
  expect(Math.abs(found.sdDeg - 1.1 * sdDeg)).toBeGreaterThan(4 * error);
  expect(Math.abs(found.meanDeg - meanDeg)).toBeLessThan((4 * sdDeg) / Math.sqrt(RINGS));
}

/** By hand: what a test ring cut face by face reads by chance, for a standard deviation of 1° a face. */
function ownReadingMm(): number {
  let squares = 0;
  for (let j = 0; j < N; j++) squares += 2 * (CORNER_MM * (1 - Math.cos((2 * Math.PI * j) / N))) ** 2;
  return Math.sqrt(squares) * RADIANS_PER_DEGREE;
}

describe('after one full correction', () => {
  test('what is left of the tilt is the error of the reading over the reading per degree', () => {
    expectLeft(rings({ tilt: { sharedDeg: 0.3, biasDeg: 0.2 } }, { readingMm: 0.5 }), 0.5 / S);
    // whatever there was before
    expectLeft(rings({ tilt: { sharedDeg: 0.6, shape: 'uniform', biasDeg: -0.4 } }, { readingMm: 0.5 }), 0.5 / S);
  });

  test('the test ring’s own cuts mislead by what they read over the reading per degree', () => {
    const perCutDeg = 0.05;
    const method: MethodChanges = { sequence: 'swapSides', tilt: { sharedDeg: 0.3, perCutDeg } };
    expectLeft(rings(method, { readingMm: 0 }), (perCutDeg * ownReadingMm()) / S);
    expectLeft(rings(method, { readingMm: 0.3 }), Math.hypot(0.3, perCutDeg * ownReadingMm()) / S);
  });

  test('dialling adds its own error, and a share of the correction', () => {
    const method: MethodChanges = { tilt: { sharedDeg: 0.3 } };
    expectLeft(rings(method, { readingMm: 0.2, dialDeg: 0.04 }), Math.hypot(0.2 / S, 0.04));
    // the correction itself varies by tilt and reading; a share of a normal times a normal: only its variance is checked
    const shared = left(rings(method, { readingMm: 0.2, dialShare: 0.2 })).sdDeg;
    const variance = (0.2 / S) ** 2 + 0.2 ** 2 * (0.3 ** 2 + (0.2 / S) ** 2);
    // its fourth moment is at most nine times the squared variance
    expect(Math.abs(shared - Math.sqrt(variance))).toBeLessThan(4 * Math.sqrt(variance) * Math.sqrt(8 / (4 * RINGS)));
  });

  test('errors of the other shared sources are dialled away with the tilt, as a closed ring shows', () => {
    const result = rings({ sequence: 'swapSides', tilt: { sharedDeg: 0.2, sideDeg: 0.1 } }, { readingMm: 0 });
    // the tilt now stands off by what the sides differ from nothing: mean of two sides
    expectLeft(result, 0.1 / Math.SQRT2);
    expect(Math.max(...result.mouthMm.map(Math.abs))).toBeLessThan(1e-9);
  });

  test('an offset that was aimed at stays', () => {
    const result = rings({ tilt: { sharedDeg: 0.2, aimDeg: -0.1 } }, { readingMm: 0 });
    expect(Math.max(...result.tiltRad.map(Math.abs))).toBeLessThan(1e-12);
    for (const mouth of result.mouthMm) expect(mouth).toBeCloseTo(0.1 * S, 9);
  });

  test('a tilt set anew for every cut keeps its spread; only the bias is corrected', () => {
    const method: MethodChanges = { sequence: 'swapSides', tilt: { sharedDeg: 0.05, biasDeg: 0.3, reset: 'everyCut' } };
    const result = rings(method, { readingMm: 0.1 });
    const perRound = Math.hypot(0.1, 0.05 * ownReadingMm()) / S;
    expectLeft(result, perRound);
    const { sd } = new Moments().add(result.mouthMm);
    const expected = Math.hypot(S * perRound, 0.05 * ownReadingMm());
    expect(Math.abs(sd - expected)).toBeLessThan((4 * expected) / Math.sqrt(2 * RINGS));
  });

  test('the swing of a flat frame is corrected instead, and its tilt is left alone', () => {
    const piece = { slopeDeg: 90, heightMm: 40, sides: 4, size: { by: 'staveWidth', mm: 300 } } as const;
    const method: MethodChanges = { guide: { settingDeg: 0.3 }, tilt: { sharedDeg: 0.1 } };
    const result = rings(method, { readingMm: 0 }, { piece });
    expect(Math.max(...result.mouthMm.map(Math.abs))).toBeLessThan(1e-9);
    expectLeft(result, 0.1);
    const untested = rings(method, { kind: 'none' }, { piece });
    expect(new Moments().add(untested.mouthMm).sd).toBeGreaterThan(1);
  });
});

describe('without a test', () => {
  const tiltAfter = (tilt: MethodChanges['tilt'], test: Partial<TestCuts> = {}) => {
    const project = projectWith({ run: { rule: 'touch', trials: 100 }, method: { tilt: tilt!, test } });
    return finish(runMethod(project, 0)).prediction.tiltSharedAfterTestDeg;
  };

  test('the tilt keeps its bias and its spread exactly', () => {
    expect(tiltAfter({ sharedDeg: 0.1, biasDeg: 0.03 })).toEqual({ mean: 0.03, sd: 0.1 });
    expect(tiltAfter({ sharedDeg: 0.3, shape: 'uniform' }).sd).toBeCloseTo(0.3 / Math.sqrt(3), 12);
    expect(tiltAfter({ sharedDeg: 0.1, biasDeg: 0.03, reset: 'everyCut' })).toEqual({ mean: 0.03, sd: 0 });
    expect(tiltAfter({ sharedDeg: 0.1 }, { kind: 'fullRing', maxRounds: 0 })).toEqual({ mean: 0, sd: 0.1 });
  });

  test('with one, the run reports what is left', () => {
    const { sd } = tiltAfter({ sharedDeg: 0.5 }, { ...ONE_ROUND, readingMm: 0.5 });
    // from 100 set-ups: four standard errors
    expect(Math.abs(sd - 0.5 / S)).toBeLessThan((4 * 0.5) / S / Math.sqrt(200));
  });
});

describe('rounds', () => {
  const method: MethodChanges = { tilt: { sharedDeg: 0.1 } };
  const stopping: Partial<TestCuts> = { readingMm: 0.4, stopWhenMm: 1, maxRounds: 3 };

  test('end with the first reading that is small enough, after at least one and at most the rounds given', () => {
    const { rounds, tiltRad } = rings(method, stopping);
    const share = 2 * normalCdf(1 / Math.hypot(0.1 * S, 0.4)) - 1;
    const afterOne = rounds.filter((r) => r === 1).length;
    expect(Math.abs(countDeviation(afterOne, RINGS, share))).toBeLessThan(4);
    expect(Math.min(...rounds)).toBe(1);
    expect(Math.max(...rounds)).toBe(3);
    // after a correction what is read is the error of two readings; a ring that had to go on stops with this chance
    const afterTwo = rounds.filter((r) => r === 2).length;
    expect(
      Math.abs(countDeviation(afterTwo, RINGS - afterOne, 2 * normalCdf(1 / Math.hypot(0.4, 0.4)) - 1)),
    ).toBeLessThan(6);
    // who stopped at once was never dialled
    const untested = rings(method, { kind: 'none' }, {}, 9).mouthMm;
    expect(untested).toHaveLength(tiltRad.length);
  });

  test('with nothing to read are one, and leave a perfect setting perfect', () => {
    const { rounds, tiltRad } = rings({}, { ...stopping, readingMm: 0 });
    expect(rounds.every((r) => r === 1)).toBe(true);
    expect(tiltRad.every((t) => t === 0)).toBe(true);
  });

  test('more of them, or a better reading, leave less; a worse reading more', () => {
    const dialling = { ...stopping, stopWhenMm: 0.2, dialShare: 0.3 };
    const sd = (test: Partial<TestCuts>) => left(rings({ tilt: { sharedDeg: 0.3 } }, { ...dialling, ...test })).sdDeg;
    const [none, one, two, three] = [
      sd({ kind: 'fullRing', maxRounds: 1, stopWhenMm: 99 }),
      ...[1, 2, 3].map((maxRounds) => sd({ maxRounds })),
    ];
    expect(one).toBeLessThan(0.8 * none!);
    expect(two).toBeLessThan(0.8 * one!);
    expect(three).toBeLessThan(two!);
    expect(sd({ readingMm: 0.1 })).toBeLessThan(three!);
    expect(sd({ readingMm: 1.5 })).toBeGreaterThan(three!);
  });
});
