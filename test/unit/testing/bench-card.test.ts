/** From a reading to what to dial: closed forms, limiting cases, and the engine's own test cuts as a Monte Carlo check. */
import { describe, expect, test } from 'vitest';
import { ringGeometry } from '../../../sim/geometry/ring';
import type { Project, TestCuts } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { runBlock } from '../../../sim/run/block';
import { methodPlan } from '../../../sim/run/plan';
import { Moments } from '../../../sim/statistics/moments';
import {
  type BenchCard,
  benchCard,
  TEST_PIECE_KINDS,
  type TestPieceKind,
  testPieceFigures,
} from '../../../sim/testing/bench-card';
import { type MethodChanges, type ProjectChanges, projectWith } from '../../support/projects';

const RADIANS = Math.PI / 180;

function piece(method: MethodChanges = {}, rest: ProjectChanges = {}): Project {
  return projectWith({ ...rest, method });
}

const dialled = (project: Project, kind: TestPieceKind, readingMm: number): BenchCard =>
  benchCard(project, 0, kind, readingMm);

describe('how much one degree shows', () => {
  // derived: each of 2N faces turns the ring about the corner it sits on; D is across the corners
  test.each([6, 8, 12])('on an upright ring of %i staves', (sides) => {
    const project = piece({ test: { armMm: 150 } }, { piece: { sides } });
    const { outsideCornersMm } = ringGeometry(project.piece);
    const shows = (kind: TestPieceKind) => Math.abs(testPieceFigures(project, 0, kind).mmPerDeg);
    expect(shows('fullRing')).toBeCloseTo((sides * outsideCornersMm * Math.PI) / 180, 9);
    expect(shows('twoHalvesTogether')).toBeCloseTo((sides * outsideCornersMm * Math.PI) / 180, 9);
    expect(shows('halfRing')).toBeCloseTo((sides * outsideCornersMm * Math.PI) / 360, 9);
    expect(shows('pair')).toBeCloseTo((2 * 150 * Math.PI) / 180, 9);
  });

  test('is said for every kind, whatever the method itself uses, also when it tests nothing', () => {
    for (const kind of TEST_PIECE_KINDS) {
      const none = testPieceFigures(piece({ test: { kind: 'none', maxRounds: 0 } }), 0, kind);
      expect(none).toEqual(testPieceFigures(piece({ test: { kind: 'pair', maxRounds: 3 } }), 0, kind));
      expect(none.refusal).toBeNull();
    }
  });
});

describe('what is dialled', () => {
  test.each(TEST_PIECE_KINDS)('makes good a setting that is off by a known angle, %s', (kind) => {
    const card = dialled(piece(), kind, 0.9);
    const offDeg = 0.9 / Math.abs(card.mmPerDeg);
    // open: the angle is too small, so it is made larger by just what it lacks
    expect(card.dialDeg).toBeCloseTo(offDeg, 12);
    expect(dialled(piece(), kind, -0.9).dialDeg).toBeCloseTo(-offDeg, 12);
    expect(card.leftOverDeg).toBe(0);
  });

  test('closes the very rings the engine simulates', () => {
    // the bias is the same in every cut: read without error, dialled without error, nothing of it is left
    const method: MethodChanges = { tilt: { biasDeg: -0.2 } };
    const open = runBlock(methodPlan(piece(method, { run: { rule: 'touch' } }), 0), 1, 0, 1).mouthMm[0]!;
    expect(open).toBeGreaterThan(0);
    expect(dialled(piece(method), 'fullRing', open).dialDeg).toBeCloseTo(0.2, 9);
  });

  test('leaves alone what was aimed at', () => {
    const aimed = piece({ tilt: { aimDeg: -0.1 }, test: { stopWhenMm: 0.05 } });
    const { mmPerDeg, aimReadingMm } = testPieceFigures(aimed, 0, 'fullRing');
    expect(aimReadingMm).toBeCloseTo(-0.1 * mmPerDeg, 9);
    expect(dialled(aimed, 'fullRing', aimReadingMm)).toMatchObject({ stop: true, missMm: 0, dialDeg: 0 });
    expect(dialled(aimed, 'fullRing', 0).dialDeg).toBeCloseTo(-0.1, 9);
  });

  test('is nothing at all for a reading of nothing', () => {
    expect(Object.is(dialled(piece(), 'fullRing', 0).dialDeg, 0)).toBe(true);
    expect(Object.is(dialled(piece(), 'fullRing', 0).leftOverDeg, 0)).toBe(true);
  });

  test('goes to the swing of a flat frame', () => {
    const flat = piece({}, { piece: { slopeDeg: 90, heightMm: 40, sides: 4, size: { by: 'staveWidth', mm: 300 } } });
    expect(dialled(flat, 'fullRing', 0.5)).toMatchObject({ setting: 'swing' });
    expect(dialled(flat, 'fullRing', 0.5).dialDeg).toBeGreaterThan(0);
  });
});

describe('when to stop', () => {
  const limited = piece({ test: { stopWhenMm: 0.3 } });

  test('is when the reading is at the limit or under it, on either side', () => {
    expect([-0.31, -0.3, 0, 0.3, 0.31].map((mm) => dialled(limited, 'fullRing', mm).stop)).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
  });

  test('what the reading told is what stays', () => {
    const card = dialled(limited, 'fullRing', 0.3);
    expect(card.leftOverDeg).toBeCloseTo(-card.dialDeg, 12);
    expect(card.leftOverSdDeg).toBe(card.toldSdDeg);
  });
});

describe('how far it may be off', () => {
  const quiet: Partial<TestCuts> = { readingMm: 0, dialDeg: 0, dialShare: 0, stopWhenMm: 0 };

  test('is nothing when reading, cuts and dialling are perfect', () => {
    const { dialSdDeg, leftOverSdDeg, leastToldDeg, nextReadingSdMm } = dialled(piece({ test: quiet }), 'fullRing', 1);
    expect([dialSdDeg, leftOverSdDeg, leastToldDeg, nextReadingSdMm]).toEqual([0, 0, 0, 0]);
  });

  test('is the reading error over the reading per degree when that is all there is', () => {
    const card = dialled(piece({ test: { ...quiet, readingMm: 0.5 } }), 'halfRing', 1);
    expect(card.dialSdDeg).toBeCloseTo(0.5 / Math.abs(card.mmPerDeg), 12);
    expect(card.leastToldDeg).toBeCloseTo(2 * card.dialSdDeg, 12);
  });

  test('has dialling in it, and a share of what is dialled', () => {
    const card = dialled(piece({ test: { ...quiet, dialDeg: 0.03, dialShare: 0.2 } }), 'fullRing', 1.5);
    expect(card.dialSdDeg).toBeCloseTo(Math.hypot(0.03, 0.2 * card.dialDeg), 12);
  });

  test('has the test piece’s own cuts in it, face by face', () => {
    // by hand: N faces a side at levers R(1 − cos(2πj/N)) from the mouth
    const [N, perCutDeg] = [8, 0.05];
    const cornerMm = 50 / Math.sin(Math.PI / N);
    let squares = 0;
    for (let j = 0; j < N; j++) squares += 2 * (cornerMm * (1 - Math.cos((2 * Math.PI * j) / N))) ** 2;
    const project = piece({ sequence: 'swapSides', tilt: { perCutDeg }, test: quiet });
    const { ownSdMm, toldSdDeg, mmPerDeg } = testPieceFigures(project, 0, 'fullRing');
    expect(ownSdMm).toBeCloseTo(perCutDeg * RADIANS * Math.sqrt(squares), 9);
    expect(toldSdDeg).toBeCloseTo(ownSdMm / Math.abs(mmPerDeg), 12);
    // a pair has two faces at the end of its arm
    const pair = testPieceFigures(project, 0, 'pair');
    expect(pair.ownSdMm).toBeCloseTo(perCutDeg * RADIANS * Math.SQRT2 * 100, 9);
  });

  test('counts a tilt set anew for every cut as the test piece’s own', () => {
    const anew = (shape: 'normal' | 'uniform') =>
      testPieceFigures(piece({ tilt: { sharedDeg: 0.1, shape, reset: 'everyCut' }, test: quiet }), 0, 'pair').ownSdMm;
    expect(anew('normal')).toBeGreaterThan(0);
    // a uniform error of that half-width has √⅓ of its spread
    expect(anew('uniform')).toBeCloseTo(anew('normal') / Math.sqrt(3), 12);
    expect(testPieceFigures(piece({ tilt: { sharedDeg: 0.1 }, test: quiet }), 0, 'pair').ownSdMm).toBe(0);
  });
});

describe('against the engine', () => {
  const SETTINGS: Partial<TestCuts> = { maxRounds: 1, stopWhenMm: 0, readingMm: 0.2, dialDeg: 0.02, dialShare: 0 };
  const CASES: readonly [string, TestPieceKind, MethodChanges][] = [
    ['a whole ring, strip turned over', 'fullRing', { tilt: { perCutDeg: 0.04 }, width: { perCutMm: 0.1 } }],
    ['half a ring, sides swapped', 'halfRing', { sequence: 'swapSides', tilt: { perCutDeg: 0.06 } }],
    [
      'two halves, with a seat and a kerf',
      'twoHalvesTogether',
      { guide: { seatMm: 0.1 }, blade: { kerfSigmaMm: 0.1 } },
    ],
    ['a pair', 'pair', { tilt: { perCutDeg: 0.05 } }],
    [
      'a stop that creeps and catches chips',
      'fullRing',
      { width: { driftSigmaMm: 0.05, chipChance: 0.2, chipMeanMm: 0.3 } },
    ],
  ];
  const RINGS = 20_000;

  test.each(CASES)('the tilt left after one round spreads as the card says: %s', (_, kind, method) => {
    const own = { ...method, test: { ...SETTINGS, kind } };
    const project = piece({ ...own, tilt: { sharedDeg: 0.3, ...own.tilt } }, { run: { rule: 'touch' } });
    const { leftOverSdDeg } = dialled(project, kind, 1);
    const { tiltRad } = runBlock(methodPlan(project, 0), 21, 0, RINGS);
    const { sd } = new Moments().add(tiltRad);
    // four standard errors of a standard deviation, doubled for the long tail of the chips
    const error = (4 * leftOverSdDeg) / Math.sqrt(2 * RINGS);
    expect(Math.abs(sd / RADIANS - leftOverSdDeg)).toBeLessThan(2 * error);
    // a tenth more would be seen
    expect(Math.abs(sd / RADIANS - 1.1 * leftOverSdDeg)).toBeGreaterThan(2 * error);
  });

  test('the next test piece reads as the card says', () => {
    const method: MethodChanges = {
      tilt: { sharedDeg: 0.3, perCutDeg: 0.04 },
      test: { ...SETTINGS, kind: 'fullRing' },
    };
    const project = piece(method, { run: { rule: 'touch' } });
    const { nextReadingSdMm } = dialled(project, 'fullRing', 1);
    const { mouthMm } = runBlock(methodPlan(project, 0), 22, 0, RINGS);
    // the piece itself is the next ring, read without the error of reading
    const { sd } = new Moments().add(mouthMm);
    const read = Math.hypot(sd, 0.2);
    expect(Math.abs(read - nextReadingSdMm)).toBeLessThan((4 * read) / Math.sqrt(2 * RINGS));
  });
});

describe('a test piece is refused', () => {
  test('in halves for an odd number of sides', () => {
    const seven = piece({}, { piece: { sides: 7 } });
    expect(TEST_PIECE_KINDS.map((kind) => testPieceFigures(seven, 0, kind).refusal)).toEqual([
      null,
      'odd sides',
      'odd sides',
      null,
    ]);
  });

  test('when a degree moves it by less than a millimetre', () => {
    // 2·arm·π/180 is 1 mm at 28.65 mm
    const refusal = (armMm: number) => testPieceFigures(piece({ test: { armMm } }), 0, 'pair').refusal;
    expect([28.6, 28.7].map(refusal)).toEqual(['tells too little', null]);
  });
});

test('there is no card for a method that is not there', () => {
  expect(() => benchCard(exampleProject(), 9, 'fullRing', 0)).toThrow('Method 9 is not one of the 4 in the project.');
});
