/** The key table of the file format, row by row, written here anew rather than read from the code. */
import { describe, expect, it } from 'vitest';
import type { Project } from '../../sim/project/document';
import { readProject } from '../../sim/reading/read';
import { bareFile, fileWith } from './bare-file';
import { BARE_PROJECT } from './bare-project';

function read(changes: Record<string, unknown>): Project {
  const outcome = readProject(JSON.stringify(fileWith(changes)));
  if (!outcome.ok) throw new Error(outcome.problems.map(({ path, sentence }) => `${path}: ${sentence}`).join('\n'));
  return outcome.project;
}

function problemPaths(changes: Record<string, unknown>): string[] {
  const outcome = readProject(JSON.stringify(fileWith(changes)));
  return outcome.ok ? [] : outcome.problems.map(({ path }) => path);
}

describe('defaults', () => {
  it('fills in every key a bare file leaves out', () => {
    expect(read({})).toEqual(BARE_PROJECT);
  });

  it('fills in the rest of a group that is given in part', () => {
    const project = read({ 'methods[0].blade.plateMm': 1.6, 'limits.showGapMm': 0.1, 'run.settle.relative': 0.01 });
    expect(project.methods[0]?.blade).toMatchObject({ plateMm: 1.6, kerfMm: 2.8, collarMm: 70 });
    expect(project.limits).toEqual({ showGapMm: 0.1, hiddenGapMm: 0.4, remedyGapMm: 0.5 });
    expect(project.run).toEqual({ trials: 100000, seed: 1, rule: 'contact', settle: { relative: 0.01 } });
  });

  it('takes an insert without clearance', () => {
    expect(read({ 'piece.insert.diameterMm': 300 }).piece.insert).toEqual({ diameterMm: 300, clearanceMm: 0 });
  });
});

describe('required keys', () => {
  it.each([
    'format',
    'version',
    'title',
    'piece',
    'piece.sides',
    'piece.size',
    'piece.size.by',
    'piece.size.mm',
    'piece.heightMm',
    'piece.thicknessMm',
    'methods',
    'methods[0].name',
  ])('%s may not be left out', (path) => {
    expect(problemPaths({ [path]: undefined })).toEqual([path]);
  });

  it('wants at least one method', () => {
    expect(problemPaths({ methods: [] })).toEqual(['methods']);
  });
});

/** path, values allowed, values refused; `beside` are keys that must change along for the value to make sense. */
interface Row {
  path: string;
  inside: unknown[];
  outside: unknown[];
  beside?: Record<string, unknown>;
}

const tiny = 1e-9;
const chance: Pick<Row, 'inside' | 'outside'> = { inside: [0, 1], outside: [-tiny, 1 + tiny] };
const sigma = (most: number): Pick<Row, 'inside' | 'outside'> => ({ inside: [0, most], outside: [-tiny, most + 1e-6] });
const notNegative: Pick<Row, 'inside' | 'outside'> = { inside: [0, 1, 12345.5], outside: [-tiny] };

const method = (group: string, key: string, row: Omit<Row, 'path'>): Row => ({
  path: `methods[0].${group}.${key}`,
  ...row,
});

const ROWS: Row[] = [
  { path: 'piece.sides', inside: [3, 60], outside: [2, 61, 12.5, 0, -3], beside: { 'piece.size.mm': 2000 } },
  { path: 'piece.slopeDeg', inside: [0, 90], outside: [-tiny, 90 + 1e-6] },
  { path: 'piece.size.mm', inside: [5000], outside: [0, -1, 5000.001] },
  { path: 'piece.heightMm', inside: [tiny, 3000], outside: [0, -1, 3000.001] },
  { path: 'piece.thicknessMm', inside: [tiny, 199], outside: [0, -1, 200.001], beside: { 'piece.size.mm': 1000 } },
  { path: 'piece.insert.diameterMm', inside: [0.001, 370], outside: [0, -1, 370.01] },
  {
    path: 'piece.insert.clearanceMm',
    inside: [0, 70],
    outside: [-tiny],
    beside: { 'piece.insert.diameterMm': 300 },
  },
  { path: 'stock.stripLengthMm', inside: [20000], outside: [-tiny, 20000.1] },
  { path: 'stock.stripCount', inside: [1, 12], outside: [0, 13, 1.5] },
  { path: 'stock.trimMm', ...sigma(20000) },
  { path: 'stock.holdMm', ...sigma(20000) },
  { path: 'stock.thicknessSigmaMm', inside: [0, 0.5], outside: [-tiny] },
  { path: 'stock.cupMm', inside: [0, 0.5], outside: [-tiny] },
  { path: 'stock.edgeTaperDeg', inside: [0, 0.5], outside: [-tiny] },
  { path: 'limits.showGapMm', ...sigma(10) },
  { path: 'limits.hiddenGapMm', ...sigma(10) },
  { path: 'limits.remedyGapMm', ...sigma(10) },
  { path: 'costs.batch', inside: [1, 1000], outside: [0, 1001, 2.5] },
  ...['stockPerRing', 'testStockPerRound', 'ratePerHour', 'remedyMinutes', 'assemblyMinutes'].map((key) => {
    return { path: `costs.${key}`, ...notNegative };
  }),
  ...['biasDeg', 'aimDeg'].map((key) => method('tilt', key, { inside: [-5, 5], outside: [-5.001, 5.001] })),
  ...['sharedDeg', 'sideDeg', 'perCutDeg'].map((key) => method('tilt', key, sigma(5))),
  ...['zeroDeg', 'settingDeg', 'slotDeg', 'seatMm'].map((key) => method('guide', key, sigma(5))),
  method('guide', 'faceMm', { inside: [20, 2000], outside: [19.99, 2000.01] }),
  ...['sharedMm', 'perCutMm', 'driftSigmaMm'].map((key) => method('width', key, sigma(10))),
  method('width', 'driftMeanMm', { inside: [-1, 1], outside: [-1.001, 1.001] }),
  method('width', 'chipChance', chance),
  method('blade', 'plateMm', { inside: [tiny, 2.79], outside: [0, -1, 2.8, 3] }),
  method('blade', 'kerfMm', { inside: [2.21], outside: [0, 2.2, 1] }),
  method('blade', 'diameterMm', { inside: [140, 700], outside: [139.9, 700.1, 0] }),
  method('blade', 'collarMm', { inside: [25, 125], outside: [24.9, 125.1, 0] }),
  method('blade', 'stiffnessNPerMm', { inside: [null, 40], outside: [0, -1] }),
  method('blade', 'forceMeanN', { inside: [-500, 500], outside: [-500.1, 500.1] }),
  ...['forceSigmaN', 'forceWithinCutN', 'snagMeanN'].map((key) => method('blade', key, sigma(500))),
  method('blade', 'snagChance', chance),
  method('blade', 'recutAboveMm', { inside: [null, 0.3], outside: [-tiny] }),
  method('assembly', 'freeJoints', { inside: [2, 12], outside: [1, 13, 2.5] }),
  ...['pullUpMm', 'truingMm'].map((key) => method('assembly', key, { inside: [0, 0.5], outside: [-tiny] })),
  method('test', 'maxRounds', { inside: [0, 20], outside: [-1, 21, 1.5] }),
  ...['readingMm', 'stopWhenMm', 'dialDeg', 'dialShare'].map((key) => {
    return method('test', key, { inside: [0, 0.5], outside: [-tiny] });
  }),
  method('test', 'armMm', { inside: [70], outside: [0, -1] }),
  ...['setUp', 'perCut', 'perTestRound'].map((key) => method('minutes', key, notNegative)),
  { path: 'run.trials', inside: [100, 10_000_000], outside: [99, 10_000_001, 1000.5] },
  { path: 'run.seed', inside: [0, 2 ** 32 - 1], outside: [-1, 2 ** 32, 0.5] },
  { path: 'run.settle.relative', inside: [0.01, 1], outside: [0, -0.01] },
];

const NEVER_A_NUMBER = [1e308, -1e308, '1', true, [], {}];

describe.each(ROWS)('$path', ({ path, inside, outside, beside }) => {
  it('takes the ends of its range', () => {
    for (const value of inside) expect(problemPaths({ ...beside, [path]: value }), `${value}`).toEqual([]);
  });

  it('refuses what lies outside, naming the key or the one it does not fit', () => {
    const partners: Record<string, string> = {
      'methods[0].blade.kerfMm': 'methods[0].blade.plateMm',
      'methods[0].blade.diameterMm': 'methods[0].blade.collarMm',
    };
    for (const value of outside) {
      const [first, ...others] = problemPaths({ ...beside, [path]: value });
      expect([path, partners[path]], `${value}`).toContain(first);
      expect(others).toEqual([]);
    }
  });

  it('refuses 1e308 and what is no number', () => {
    for (const value of NEVER_A_NUMBER) expect(problemPaths({ ...beside, [path]: value }), `${value}`).toEqual([path]);
  });
});

describe('words', () => {
  const grainUp = { 'piece.grain': 'upStave' };
  it.each([
    ['display', ['metric', 'inch'], {}],
    ['piece.grain', ['alongRing', 'upStave'], {}],
    ['piece.showFace', ['outside', 'inside', 'both'], {}],
    ['piece.size.by', ['outsideFlats', 'outsideCorners', 'clearOpening', 'staveWidth'], {}],
    ['methods[0].sequence', ['flipFace', 'swapSides'], {}],
    ['methods[0].wideFace', ['down', 'up'], {}],
    ['methods[0].tilt.shape', ['normal', 'uniform'], {}],
    ['methods[0].tilt.reset', ['once', 'everyCut'], {}],
    ['methods[0].width.by', ['markedLine', 'fixedStop', 'markedEach'], {}],
    ['methods[0].assembly.by', ['allAtOnce', 'oneByOne', 'twoHalves'], {}],
    ['methods[0].assembly.ends', ['free', 'flush'], {}],
    ['methods[0].test.kind', ['none', 'fullRing', 'halfRing', 'twoHalvesTogether', 'pair'], {}],
    ['run.rule', ['contact', 'touch'], {}],
    ['methods[0].sequence', ['flipFace'], grainUp],
  ])('%s takes %j and nothing else', (path, allowed, beside) => {
    for (const value of allowed) expect(problemPaths({ ...beside, [path]: value }), value).toEqual([]);
    for (const value of ['', 'Outside', 'toString', 3, null]) {
      expect(problemPaths({ ...beside, [path]: value }), `${value}`).toEqual([path]);
    }
  });
});

describe('the words for the sheets', () => {
  it.each([
    ['explain.title', 120],
    ['explain.client', 120],
    ['explain.closing', 800],
  ])('%s holds up to %i characters', (path, most) => {
    for (const value of ['', 'x'.repeat(most)]) expect(problemPaths({ [path]: value })).toEqual([]);
    for (const value of ['x'.repeat(most + 1), 3, null, []]) expect(problemPaths({ [path]: value })).toEqual([path]);
  });

  it.each(['drawing', 'why', 'dots', 'making', 'eye', 'season', 'remains'])(
    'explain.show.%s is true or false',
    (part) => {
      const path = `explain.show.${part}`;
      for (const value of [true, false]) expect(problemPaths({ [path]: value })).toEqual([]);
      for (const value of ['true', 1, null]) expect(problemPaths({ [path]: value })).toEqual([path]);
    },
  );

  it('names a method that the file has', () => {
    expect(problemPaths({ 'explain.method': 'Only' })).toEqual([]);
    for (const value of ['Other', '', 7]) expect(problemPaths({ 'explain.method': value })).toEqual(['explain.method']);
  });

  it('are left out of the document where the file leaves them out', () => {
    expect(read({})).not.toHaveProperty('explain');
    expect(read({ 'explain.show.why': false }).explain).toEqual({ show: { why: false } });
  });
});

describe('unknown keys', () => {
  it.each([
    'author',
    'piece.colour',
    'piece.size.unit',
    'stock.thickness',
    'limits.gap',
    'costs.currency',
    'methods[0].note',
    'methods[0].tilt.sigma',
    'methods[0].guide.zero',
    'methods[0].width.stop',
    'methods[0].blade.teeth',
    'methods[0].assembly.glue',
    'methods[0].test.tool',
    'methods[0].minutes.total',
    'run.workers',
    'run.settle.digits',
    'explain.author',
    'explain.show.price',
    'constructor',
    'piece.toString',
  ])('%s is refused by its path', (path) => {
    const beside = path.startsWith('run.settle') ? { 'run.settle.relative': 0.01 } : {};
    expect(problemPaths({ ...beside, [path]: 1 })).toEqual([path]);
  });

  it('leaves the bare file itself without a problem', () => {
    expect(readProject(JSON.stringify(bareFile())).ok).toBe(true);
  });
});
