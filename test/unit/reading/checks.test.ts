import { describe, expect, it } from 'vitest';
import type { Method, Project } from '../../../sim/project/document';
import { EXAMPLES, exampleProject } from '../../../sim/project/example';
import { fieldAt } from '../../../sim/project/fields';
import { problemLine, safeText } from '../../../sim/project/problem';
import { checkProject, warnings } from '../../../sim/reading/checks';

const withPiece = (piece: Partial<Project['piece']>): Project => {
  const project = exampleProject();
  return { ...project, piece: { ...project.piece, ...piece } };
};
const withMethod = (change: (method: Method) => Partial<Method>): Project => {
  const project = exampleProject();
  const [first] = project.methods;
  return { ...project, methods: [{ ...first!, ...change(first!) }] };
};

describe('checking a document that is being edited', () => {
  it('finds nothing wrong with the examples', () => {
    for (const make of Object.values(EXAMPLES)) expect(checkProject(make())).toEqual([]);
  });

  it('finds a value out of range and values that do not fit', () => {
    expect(checkProject(withPiece({ thicknessMm: 0 })).map(({ path }) => path)).toEqual(['piece.thicknessMm']);
    expect(checkProject(withPiece({ thicknessMm: Number.NaN })).map(({ path }) => path)).toEqual(['piece.thicknessMm']);
    expect(checkProject(withPiece({ thicknessMm: 25 })).map(({ path }) => path)).toEqual(['piece.insert.diameterMm']);
  });

  it('leaves the document as it is', () => {
    const project = withPiece({ sides: 2 });
    const before = structuredClone(project);
    checkProject(project);
    expect(project).toEqual(before);
  });

  it('takes an insert that fills the opening to the last hundredth', () => {
    // Outside flats 280 less twice the thickness 15 leaves 250.
    expect(checkProject(withPiece({ insert: { diameterMm: 247, clearanceMm: 3 } }))).toEqual([]);
    expect(checkProject(withPiece({ insert: { diameterMm: 247.01, clearanceMm: 3 } }))).toHaveLength(1);
  });

  it('takes strips that are just long enough', () => {
    // swapSides: 15 + 12·(280·tan 15° + 2·2.6/cos 15°) + 200 = 1179.91 mm.
    const marked = withMethod(() => ({}));
    const long = (mm: number): Project => ({ ...marked, stock: { ...marked.stock, stripLengthMm: mm } });
    expect(checkProject(long(1180))).toEqual([]);
    expect(checkProject(long(1179.8)).map(problemLine)).toEqual([expect.stringContaining('needs 1180.0 mm')]);
  });

  it('names the method that needs the longest strips', () => {
    const project = exampleProject();
    project.stock.stripLengthMm = 500;
    expect(checkProject(project).map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('method "Marked line" needs 1180.0 mm'),
    ]);
  });

  it('counts only what one strip carries', () => {
    const project = withMethod(() => ({}));
    project.stock = { ...project.stock, stripCount: 4, stripLengthMm: 460 };
    expect(checkProject(project)).toEqual([]);
    project.stock.stripLengthMm = 450;
    expect(checkProject(project).map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('3 staves of 80.4 mm'),
    ]);
  });
});

describe('warnings', () => {
  it('are silent on the examples', () => {
    for (const make of Object.values(EXAMPLES)) expect(warnings(make())).toEqual([]);
  });

  it('speak of tall staves crosscut from a strip, not of tall staves ripped', () => {
    expect(warnings(withPiece({ heightMm: 201 })).map(({ path }) => path)).toEqual(['piece.heightMm']);
    expect(warnings(withPiece({ heightMm: 200 }))).toEqual([]);
    expect(warnings(withPiece({ heightMm: 900, grain: 'upStave' }))).toEqual([]);
  });

  it('say that one by one is computed by contact whatever the rule', () => {
    const project = exampleProject();
    project.run.rule = 'touch';
    expect(warnings(project).map(({ path }) => path)).toEqual(['methods[3].assembly.by']);
  });

  it('say that a test without rounds is none, and that a remedy below the limit never helps', () => {
    const untested = withMethod((method) => ({ test: { ...method.test, kind: 'fullRing' } }));
    expect(warnings(untested).map(({ path }) => path)).toEqual(['methods[0].test.maxRounds']);
    const project = exampleProject();
    project.limits.remedyGapMm = 0.3;
    expect(warnings(project).map(({ path }) => path)).toEqual(['limits.remedyGapMm']);
  });
});

describe('fields by key path', () => {
  it('are found with the place in the list left out of account', () => {
    expect(fieldAt('methods[3].blade.kerfMm')).toMatchObject({ label: 'Kerf', unit: 'mm' });
    expect(fieldAt('piece.slopeDeg')?.range).toEqual({ from: 0, to: 90, open: false, whole: false });
    expect(fieldAt('piece.grain')).toBeUndefined();
    expect(fieldAt('constructor')).toBeUndefined();
  });
});

describe('text from a file', () => {
  it('is cut and made visible before it reaches a sentence', () => {
    expect(safeText('a\tb\u0007')).toBe('a\\u0009b\\u0007');
    expect(safeText('x'.repeat(50))).toBe(`${'x'.repeat(40)}…`);
    expect(safeText('Schräg – 3 Stück ✓')).toBe('Schräg – 3 Stück ✓');
  });
});
