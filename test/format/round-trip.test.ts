/** A project written and read again is the same project, whatever it holds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Explain, Method, Project, TestCuts } from '../../sim/project/document';
import { EXAMPLES, exampleProject } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';
import { readProject } from '../../sim/reading/read';

function reread(project: Project): Project {
  const outcome = readProject(writeProject(project));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.project;
}

/** No −0: JSON text does not tell it from 0. */
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const above = (max: number) => within(1e-6, max);

const testGiven: fc.Arbitrary<TestCuts> = fc
  .record(
    {
      kind: fc.constantFrom('none', 'fullRing', 'halfRing', 'twoHalvesTogether', 'pair'),
      maxRounds: fc.integer({ min: 0, max: 20 }),
      readingMm: within(0, 1),
      stopWhenMm: within(0, 1),
      dialDeg: within(0, 1),
      dialShare: within(0, 1),
      armMm: within(200, 500),
    },
    { requiredKeys: ['kind', 'maxRounds', 'readingMm', 'stopWhenMm', 'dialDeg', 'dialShare'] },
  )
  // Without an arm a pair is read over the stave's width, which may be too little to read: no test then.
  .map((test) => (test.kind === 'pair' && test.armMm === undefined ? { ...test, maxRounds: 0 } : test));

const methodGiven = (sides: number): fc.Arbitrary<Omit<Method, 'name'>> =>
  fc.record({
    sequence: fc.constantFrom('flipFace', 'swapSides'),
    wideFace: fc.constantFrom('down', 'up'),
    tilt: fc.record({
      biasDeg: within(-5, 5),
      sharedDeg: within(0, 5),
      shape: fc.constantFrom('normal', 'uniform'),
      sideDeg: within(0, 5),
      perCutDeg: within(0, 5),
      reset: fc.constantFrom('once', 'everyCut'),
      aimDeg: within(-5, 5),
    }),
    guide: fc.record({
      zeroDeg: within(0, 5),
      settingDeg: within(0, 5),
      slotDeg: within(0, 5),
      seatMm: within(0, 5),
      faceMm: within(20, 2000),
    }),
    width: fc.record({
      by: fc.constantFrom('markedLine', 'fixedStop', 'markedEach'),
      sharedMm: within(0, 10),
      perCutMm: within(0, 10),
      driftMeanMm: within(-1, 1),
      driftSigmaMm: within(0, 10),
      chipChance: within(0, 1),
      chipMeanMm: within(0, 10),
    }),
    blade: fc.record({
      diameterMm: within(150, 600),
      plateMm: within(0.5, 2),
      collarMm: within(60, 75),
      kerfMm: within(2.1, 5),
      kerfSigmaMm: within(0, 10),
      stiffnessNPerMm: fc.option(above(1000)),
      forceMeanN: within(-500, 500),
      forceSigmaN: within(0, 500),
      forceWithinCutN: within(0, 500),
      snagChance: within(0, 1),
      snagMeanN: within(0, 500),
      recutAboveMm: fc.option(within(0, 10)),
    }),
    assembly: fc.record({
      by: fc.constantFrom('allAtOnce', 'oneByOne', 'twoHalves'),
      freeJoints: fc.integer({ min: 2, max: sides }),
      ends: fc.constantFrom('free', 'flush'),
      pullUpMm: within(0, 1),
      truingMm: within(0, 1),
    }),
    test: testGiven,
    minutes: fc.record({ setUp: within(0, 1e5), perCut: within(0, 1e5), perTestRound: within(0, 1e5) }),
  });

const explainGiven: fc.Arbitrary<Explain> = fc.record(
  {
    title: fc.string({ unit: 'binary', maxLength: 40 }),
    client: fc.string({ unit: 'binary', maxLength: 40 }),
    closing: fc.string({ unit: 'binary', maxLength: 300 }),
    method: fc.constant('Way 0'),
    show: fc.record(
      {
        drawing: fc.boolean(),
        why: fc.boolean(),
        dots: fc.boolean(),
        making: fc.boolean(),
        eye: fc.boolean(),
        season: fc.boolean(),
        remains: fc.boolean(),
      },
      { requiredKeys: [] },
    ),
  },
  { requiredKeys: [] },
);

const anyProject: fc.Arbitrary<Project> = fc.integer({ min: 2, max: 30 }).chain((half) => {
  const sides = 2 * half;
  return fc.record(
    {
      format: fc.constant('ringtrue'),
      version: fc.constant(1),
      title: fc.string({ unit: 'binary' }),
      display: fc.constantFrom('metric', 'inch'),
      piece: fc.record(
        {
          sides: fc.constant(sides),
          slopeDeg: within(0, 90),
          grain: fc.constant('alongRing'),
          size: fc.record({ by: fc.constant('clearOpening'), mm: within(300, 5000) }),
          heightMm: above(3000),
          thicknessMm: above(200),
          showFace: fc.constantFrom('outside', 'inside', 'both'),
          insert: fc.record({ diameterMm: within(0.01, 0.5), clearanceMm: within(0, 0.4) }),
        },
        { requiredKeys: ['sides', 'slopeDeg', 'grain', 'size', 'heightMm', 'thicknessMm', 'showFace'] },
      ),
      stock: fc.record({
        wood: fc.string(),
        stripCount: fc.integer({ min: 1, max: sides }),
        trimMm: within(0, 1000),
        holdMm: within(0, 1000),
        thicknessSigmaMm: within(0, 1),
        cupMm: within(0, 1),
        edgeTaperDeg: within(0, 1),
      }),
      limits: fc.record({ showGapMm: within(0, 10), hiddenGapMm: within(0, 10), remedyGapMm: within(0, 10) }),
      costs: fc.record({
        batch: fc.integer({ min: 1, max: 1000 }),
        stockPerRing: within(0, 1e6),
        testStockPerRound: within(0, 1e6),
        ratePerHour: within(0, 1e6),
        remedyMinutes: within(0, 1e6),
        assemblyMinutes: within(0, 1e6),
      }),
      methods: fc
        .array(methodGiven(sides), { minLength: 1, maxLength: 3 })
        .map((methods) => methods.map((method, index) => ({ name: `Way ${index}`, ...method }))),
      run: fc.record(
        {
          trials: fc.integer({ min: 100, max: 10_000_000 }),
          seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
          rule: fc.constantFrom('contact', 'touch'),
          settle: fc.record({ relative: within(0.001, 1) }),
        },
        { requiredKeys: ['trials', 'seed', 'rule'] },
      ),
      explain: explainGiven,
    },
    {
      requiredKeys: ['format', 'version', 'title', 'display', 'piece', 'stock', 'limits', 'costs', 'methods', 'run'],
    },
  );
});

describe('writing and reading', () => {
  it('gives the same project back, to the last bit', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        expect(reread(project)).toEqual(project);
      }),
      { numRuns: 100, seed: 12 },
    );
  }, 60_000);

  it('writes the same text whatever the order in which the keys came', () => {
    const project = exampleProject();
    const shuffled = JSON.parse(JSON.stringify(project), (_, value: unknown) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    ) as Project;
    expect(Object.keys(shuffled)[0]).toBe('run');
    expect(writeProject(shuffled)).toBe(writeProject(project));
  });

  it.each(Object.entries(EXAMPLES))('keeps the example %s', (_, example) => {
    expect(reread(example())).toEqual(example());
  });

  it('ends the text with a line end and indents by two', () => {
    expect(writeProject(exampleProject())).toMatch(/^\{\n {2}"format": "ringtrue",\n {2}"version": 1,\n[\s\S]*\}\n$/);
  });
});

describe('files as other programs leave them', () => {
  const text = writeProject(exampleProject());
  it.each([
    ['a byte order mark', `\uFEFF${text}`],
    ['CRLF line ends', text.replaceAll('\n', '\r\n')],
    ['one long line', JSON.stringify(JSON.parse(text))],
    ['numbers with exponents', text.replace('"mm": 280', '"mm": 2.8E+2').replace('0.02', '2e-2')],
  ])('reads %s', (_, written) => {
    expect(readProject(written)).toEqual({ ok: true, project: exampleProject() });
  });
});
