/** The test pieces in words: where to read, how much a degree shows, and why one cannot be used. */
import { describe, expect, test } from 'vitest';
import type { Piece, Project } from '../../../sim/project/document';
import { TEST_PIECE_KINDS, type TestPieceKind, testPieceFigures } from '../../../sim/testing/bench-card';
import {
  chanceSentence,
  perDegreeText,
  readingWords,
  refusalSentence,
  showsText,
  smallAngleText,
  TEST_KIND_WORDS,
  tellsMostSentence,
} from '../../../sim/wording/test-pieces';
import { type MethodChanges, projectWith } from '../../support/projects';

const withPiece = (piece: Partial<Piece>, method: MethodChanges = {}): Project => projectWith({ piece, method });

function where(kind: TestPieceKind, project: Project): string {
  return readingWords(kind, project.piece, project.methods[0]!, project.display).where;
}

function refusal(kind: TestPieceKind, project: Project): string | null {
  const figures = testPieceFigures(project, 0, kind);
  return refusalSentence(kind, figures, project.piece, project.methods[0]!, project.display);
}

describe('where a test piece is read', () => {
  test('is the edge that shows, and the middle of the joint', () => {
    expect(where('fullRing', withPiece({}))).toMatch(/last joint at its outside edge, half-way up\.$/);
    expect(where('fullRing', withPiece({ showFace: 'inside' }))).toMatch(/at its inside edge, half-way up\.$/);
    expect(where('twoHalvesTogether', withPiece({ showFace: 'inside' }))).toMatch(
      /at its outside edge, half-way up\.$/,
    );
    expect(where('fullRing', withPiece({ slopeDeg: 90, heightMm: 40 }))).toMatch(/half-way along the joint\.$/);
  });

  test('for a pair is the end of its arm, at the corner of the ring', () => {
    expect(where('pair', withPiece({}))).toContain('a reference angle of 135° ');
    expect(where('pair', withPiece({ sides: 7 }))).toContain('128.57°');
    expect(where('pair', withPiece({}))).toMatch(/under the other leg, 100 mm from the corner\.$/);
    expect(where('pair', withPiece({}, { test: { armMm: 250 } }))).toMatch(/250 mm from the corner\.$/);
  });

  test('always names what is seen on either side, and what it is read with', () => {
    for (const kind of TEST_PIECE_KINDS) {
      const { open, over, tool } = readingWords(kind, withPiece({}).piece, withPiece({}).methods[0]!, 'metric');
      expect(open).not.toBe(over);
      expect(tool).toMatch(/feeler gauges/i);
    }
  });
});

describe('how much a degree shows', () => {
  test('to three digits, in the unit shown', () => {
    expect([0.1234, 3.456, 36.487, 123.4].map((mm) => perDegreeText(mm, 'metric'))).toEqual([
      '0.123 mm',
      '3.46 mm',
      '36.5 mm',
      '123 mm',
    ]);
    expect(perDegreeText(-36.487, 'inch')).toBe('1.44 in');
    expect(showsText(testPieceFigures(withPiece({}), 0, 'fullRing'), 'metric')).toBe(
      '1° of the tilt shows as 36.5 mm.',
    );
  });

  test('small angles keep a digit that says something', () => {
    expect([0.2, -0.0832, 0.0095, 0.0094, 0.0004].map(smallAngleText)).toEqual([
      '0.20°',
      '0.08°',
      '0.01°',
      '0.009°',
      '0.000°',
    ]);
  });
});

describe('a test piece that cannot be used', () => {
  test('says that halves need an even number of sides', () => {
    const seven = withPiece({ sides: 7 });
    expect(refusal('halfRing', seven)).toBe(
      'Half a ring needs an even number of sides, but there are 7. Use a whole ring or a pair of offcuts.',
    );
    expect(refusal('twoHalvesTogether', seven)).toMatch(/^Two halves together need an even number of sides/);
    expect([refusal('fullRing', seven), refusal('pair', seven)]).toEqual([null, null]);
  });

  test('says that a short arm moves too little', () => {
    // by hand: 2 · 20 mm · π/180 = 0.70 mm
    expect(refusal('pair', withPiece({}, { test: { armMm: 20 } }))).toBe(
      'A pair of offcuts over an arm of 20 mm moves 0.7 mm for each degree of the tilt, below the 1 mm that can be read. Use a longer arm or another test piece.',
    );
  });
});

test('every choice has a name and one sentence', () => {
  for (const { label, explanation } of Object.values(TEST_KIND_WORDS)) {
    expect(label).toMatch(/^[A-Z]/);
    expect(explanation).toMatch(/^[A-Z][^.]*\.$/);
  }
});

describe('which test piece tells most', () => {
  const judged = (project: Project) =>
    TEST_PIECE_KINDS.map((kind) => {
      return { kind, figures: testPieceFigures(project, 0, kind), refusal: refusal(kind, project) };
    });

  test('is said with the one in use, where that is another', () => {
    // by hand: 2 · 0.1 mm over 2N·R·π/180 = 36.49 mm, and over 2 · 100 mm · π/180 = 3.49 mm
    expect(tellsMostSentence(judged(withPiece({})), 'pair')).toBe(
      'A whole ring and two halves together tell most: an error of the tilt down to 0.005°, against 0.06° with a pair of offcuts.',
    );
    expect(tellsMostSentence(judged(withPiece({})), 'fullRing')).toMatch(/down to 0\.005°\.$/);
    expect(tellsMostSentence(judged(withPiece({})), 'none')).toMatch(/down to 0\.005°\.$/);
  });

  test('leaves out those that cannot be used', () => {
    expect(tellsMostSentence(judged(withPiece({ sides: 7 })), 'halfRing')).toMatch(/^A whole ring tells most: /);
    expect(tellsMostSentence([], 'none')).toBe('None of the test pieces tells enough about this piece.');
  });
});

describe('what chance alone reads', () => {
  const chance = (stopWhenMm: number, display: 'metric' | 'inch' = 'metric') => {
    const project = withPiece({}, { test: { readingMm: 0.3, stopWhenMm } });
    return chanceSentence(testPieceFigures(project, 0, 'fullRing'), project.methods[0]!.test, display);
  };

  test('is twice the spread of a reading, in two digits', () => {
    expect(chance(0.3)).toBe('Even a right setting reads up to 0.60 mm by chance, 19 times in 20.');
    expect(chance(0.3, 'inch')).toBe('Even a right setting reads up to 0.024 in by chance, 19 times in 20.');
  });

  test('tells whoever would stop only below one standard deviation', () => {
    expect(chance(0.29)).toBe(
      'Even a right setting reads up to 0.60 mm by chance, 19 times in 20; to go on until it reads 0.29 mm is to chase chance.',
    );
  });
});
