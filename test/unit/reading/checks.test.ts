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
    expect(checkProject(long(1179.8)).map(problemLine)).toEqual([expect.stringContaining('needs 1179.92 mm')]);
  });

  it('names the method that needs the longest strips', () => {
    const project = exampleProject();
    project.stock.stripLengthMm = 500;
    expect(checkProject(project).map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('“Marked line” needs 1179.92 mm'),
    ]);
  });

  it('counts only what one strip carries', () => {
    const project = withMethod(() => ({}));
    project.stock = { ...project.stock, stripCount: 4, stripLengthMm: 460 };
    expect(checkProject(project)).toEqual([]);
    project.stock.stripLengthMm = 450;
    expect(checkProject(project).map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('3 staves of 80.41 mm'),
    ]);
  });
});

describe('what it says of them', () => {
  const said = (project: Project): string =>
    checkProject(project)
      .map(({ sentence }) => sentence)
      .join(' ');
  const inInches = (project: Project): Project => ({ ...project, display: 'inch' });

  it('is in the unit on the page, and will do when followed to the letter', () => {
    // 1000 mm are 39.370079 in, 6000 mm 236.22047 in: 1 in = 25.4 mm by definition.
    const project = inInches(withMethod(() => ({})));
    project.stock = { ...project.stock, stripLengthMm: 1000 };
    expect(said(project)).toMatch(/^Strip length 39\.370079 in is too short/);
    const needed = /needs ([\d.]+) in/.exec(said(project))?.[1];
    project.stock.stripLengthMm = Number(needed) * 25.4;
    expect(said(project)).toBe('');
    const large = inInches(withPiece({ size: { by: 'outsideFlats', mm: 6000 } }));
    expect(said(large)).toMatch(/^Size 236\.22047 in is above 196\.8503\. .* up to 196\.8503 in\.$/);
    expect(said(inInches(withPiece({ thicknessMm: 25 })))).not.toMatch(/ mm/);
  });

  it('has no words of the file in it', () => {
    const ripped = exampleProject();
    ripped.piece.grain = 'upStave';
    for (const method of ripped.methods) method.sequence = 'swapSides';
    const odd = exampleProject();
    odd.piece.sides = 11;
    for (const method of odd.methods) {
      method.assembly.by = 'twoHalves';
      method.test = { ...method.test, kind: 'halfRing', maxRounds: 1 };
    }
    const twins = exampleProject();
    for (const method of twins.methods) method.name = 'Twin';
    for (const project of [ripped, odd, twins]) {
      expect(said(project)).not.toBe('');
      // Small and capital letters run together, or a place in a list.
      expect(said(project)).not.toMatch(/\b[a-z]+[A-Z]\w*|\[\d/);
    }
    expect(said(ripped)).toContain('“Strip turned end for end”');
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
