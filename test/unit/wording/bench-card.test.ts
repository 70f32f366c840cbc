/** The words at the bench: which way to turn must never be in doubt. */
import { describe, expect, test } from 'vitest';
import type { Project } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject } from '../../../sim/project/example';
import { benchCard, TEST_PIECE_KINDS, type TestPieceKind } from '../../../sim/testing/bench-card';
import { type BenchWords, benchWords, nominalReadoutDeg, readouts, readoutText } from '../../../sim/wording/bench-card';
import { projectWith } from '../../support/projects';

function said(project: Project, kind: TestPieceKind, readingMm: number): BenchWords {
  const card = benchCard(project, 0, kind, readingMm);
  return benchWords(card, kind, project.piece, project.methods[0]!, project.display);
}

/** One degree shows as 36.5 mm on a whole ring. */
const plain = projectWith({ method: { test: { kind: 'fullRing', maxRounds: 2, readingMm: 0.1, stopWhenMm: 0.3 } } });
const frame = mirrorFrameProject();

describe('an open test ring', () => {
  const words = said(plain, 'fullRing', 3);

  test('says what is too small, and to tilt further over', () => {
    expect(words.says).toBe('Open by 3 mm at the outside edge: the bevels are too small.');
    expect(words.act).toBe('Tilt the blade 0.08° further over');
  });

  // by hand: dialling 0.0822° misses by √(0.01² + (0.15·0.0822)²) = 0.0159°, 0.58 mm; twice √(0.58² + 0.1² + 0.1²) is 1.2 mm
  test('says how far that may miss, and what it is on a square', () => {
    expect(words.giveOrTake).toBe('give or take 0.03°, 19 times in 20');
    expect(words.onSquare).toBe('0.08° is 0.14 mm at the end of a 100 mm square.');
    expect(words.left).toBe(
      'Then the tilt is right to within 0.03°, 19 times in 20, and the next test piece should read 1.2 mm at most, to either side.',
    );
    expect(words.doubt).toBe('');
  });

  test('says the same in inches', () => {
    const inch = said({ ...plain, display: 'inch' }, 'fullRing', 3);
    expect(inch.says).toBe('Open by 0.118 in at the outside edge: the bevels are too small.');
    expect(inch.act).toBe(words.act);
    expect(inch.onSquare).toBe('0.08° is 0.006 in at the end of a 4 in square.');
  });
});

describe('which way', () => {
  test.each(TEST_PIECE_KINDS)('open is further over, overlapping is back: %s', (kind) => {
    expect(said(plain, kind, 4).act).toMatch(/^Tilt the blade \d\.\d\d° further over$/);
    expect(said(plain, kind, 4).says).toMatch(/: the bevels are too small\.$/);
    expect(said(plain, kind, -4).act).toMatch(/^Bring the blade \d\.\d\d° back towards upright$/);
    expect(said(plain, kind, -4).says).toMatch(/: the bevels are too large\.$/);
    expect(said(frame, kind, 4).act).toMatch(/^Swing the gauge \d\.\d\d° further from square$/);
    expect(said(frame, kind, -4).act).toMatch(/^Bring the gauge \d\.\d\d° back towards square$/);
  });

  test('is the same on both readouts, which count against each other', () => {
    const card = benchCard(plain, 0, 'fullRing', 3);
    const [square, table] = readouts(card, 22.5);
    expect(square.label).toBe('Tilt from square');
    expect(square.afterDeg).toBeCloseTo(22.5 + card.dialDeg, 12);
    expect(table.label).toBe('Tilt from the table');
    expect([square, table].map(({ beforeDeg }) => readoutText(beforeDeg))).toEqual(['22.50°', '67.50°']);
    expect([square, table].map(({ afterDeg }) => readoutText(afterDeg))).toEqual(['22.58°', '67.42°']);
    expect(readouts(benchCard(frame, 0, 'fullRing', 3), 22.5).map(({ label }) => label)).toEqual([
      'Swing from square',
      'Swing from the blade',
    ]);
  });

  test('starts from the angle that is wanted, the aim included', () => {
    const aimed = projectWith({ method: { tilt: { aimDeg: -0.1 } } });
    expect(nominalReadoutDeg('tilt', aimed.piece, aimed.methods[0]!)).toBeCloseTo(22.4, 9);
    expect(nominalReadoutDeg('swing', frame.piece, frame.methods[0]!)).toBeCloseTo(22.5, 9);
  });
});

describe('a reading that is small enough', () => {
  test('says to leave it, why, and what the reading told all the same', () => {
    const words = said(plain, 'fullRing', -0.2);
    expect(words.says).toBe('Overlapping by 0.20 mm: the bevels are too large.');
    expect(words.act).toBe('Leave the tilt as it is');
    expect(words.giveOrTake).toBe('the reading is within the 0.3 mm you stop at');
    expect(words.left).toBe('By this reading the tilt is 0.005° too large, give or take 0.005°, 19 times in 20.');
    expect([words.onSquare, words.doubt]).toEqual(['', '']);
    const [square] = readouts(benchCard(plain, 0, 'fullRing', -0.2), 22.5);
    expect(square.afterDeg).toBe(22.5);
  });

  test('of nothing is right', () => {
    expect(said(plain, 'fullRing', 0).says).toBe('Nothing to be read: the tilt is right.');
    expect(said(plain, 'fullRing', 0).left).toMatch(/^By this reading the tilt is right, give or take /);
  });
});

test('a reading that a perfect setting could give is told as such', () => {
  const shaky = projectWith({ method: { test: { readingMm: 2, stopWhenMm: 0.3 } } });
  expect(said(shaky, 'fullRing', 3).doubt).toMatch(/^Even a perfect setting could read as much by chance/);
  expect(said(shaky, 'fullRing', 5).doubt).toBe('');
});

test('each test piece is read in its own words', () => {
  expect(said(plain, 'halfRing', 2).says).toMatch(/^Standing 2\.00 mm off the straightedge:/);
  expect(said(plain, 'halfRing', -2).says).toMatch(/^Reaching 2\.00 mm past the straightedge:/);
  expect(said(plain, 'pair', 0.5).says).toMatch(/^0\.50 mm of light at the end of the leg:/);
  expect(said(plain, 'pair', -0.5).says).toMatch(/^0\.50 mm of light at the corner:/);
  const inside = { ...plain, piece: { ...plain.piece, showFace: 'inside' as const } };
  expect(said(inside, 'fullRing', 1).says).toMatch(/^Open by 1\.00 mm at the inside edge:/);
});

test('an aim is told beside the reading, and is what the next one should come to', () => {
  const aimed = projectWith({ method: { tilt: { aimDeg: -0.1 }, test: { readingMm: 0.1, stopWhenMm: 0.3 } } });
  const words = said(aimed, 'fullRing', 1);
  expect(words.says).toBe(
    'Open by 1.00 mm at the outside edge; by your aim it should be open by 3.65 mm at the outside edge: the bevels are too large.',
  );
  expect(words.act).toBe('Bring the blade 0.07° back towards upright');
  expect(words.left).toMatch(/ of what the aim asks for\.$/);
});

test('the example’s twelve staves are corrected without any doubt', () => {
  const project = exampleProject();
  const words = said(project, 'fullRing', 2);
  expect(words.act).toBe('Tilt the blade 0.03° further over');
});
