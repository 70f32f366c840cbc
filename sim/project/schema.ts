/**
 * The one schema of the project file. It refuses unknown keys and values out of range, and fills every default.
 * What no single value shows (does the insert fit, are the strips long enough) is left to `checks.ts`.
 */
import { z } from 'zod';
import {
  DEFAULT_ASSEMBLY,
  DEFAULT_BLADE,
  DEFAULT_COSTS,
  DEFAULT_GUIDE,
  DEFAULT_LIMITS,
  DEFAULT_MINUTES,
  DEFAULT_RUN,
  DEFAULT_STOCK,
  DEFAULT_TEST,
  DEFAULT_TILT,
  DEFAULT_WIDTH,
} from './defaults';
import type { Project } from './document';
import { NUMBER_FIELDS, type NumberKey, withinRange } from './fields';
import { choiceSentence, numberSentence, valueText } from './problem';

// Compiled parsers would need eval, which the pages' content security policy forbids.
z.config({ jitless: true });

export const FILE_FORMAT = 'ringtrue';
export const FILE_VERSION = 1;

function number(key: NumberKey) {
  const { range } = NUMBER_FIELDS[key];
  return z
    .number({ error: (issue) => numberSentence(key, issue.input) })
    .refine((value) => withinRange(range, value), { error: (issue) => numberSentence(key, issue.input) });
}

function choice<const Options extends readonly [string, ...string[]]>(label: string, options: Options) {
  return z.enum(options, { error: (issue) => choiceSentence(label, options, issue.input) });
}

function text(label: string, advice: string) {
  return z.string({
    error: (issue) =>
      issue.input === undefined
        ? `${label} is missing. ${advice}`
        : `${label} is ${valueText(issue.input)}, not text. ${advice}`,
  });
}

/** A group of keys that refuses every other key; `label`, "the …", is what its sentences call it. */
function group<Shape extends z.core.$ZodLooseShape>(label: string, shape: Shape) {
  const known = Object.keys(shape).join(', ');
  const start = `T${label.slice(1)}`;
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') return `is not a key of ${label}. Take it out, or use one of ${known}.`;
      if (issue.input === undefined) return `${start} is missing. Give a group with the keys ${known}.`;
      return `${start} is ${valueText(issue.input)}, not a group of keys. Give a group with the keys ${known}.`;
    },
  });
}

const piece = group('the piece', {
  sides: number('piece.sides'),
  slopeDeg: number('piece.slopeDeg').default(0),
  grain: choice('Grain', ['alongRing', 'upStave']).default('alongRing'),
  size: group('the size', {
    by: choice('The dimension the size is given by', ['outsideFlats', 'outsideCorners', 'clearOpening', 'staveWidth']),
    mm: number('piece.size.mm'),
  }),
  heightMm: number('piece.heightMm'),
  thicknessMm: number('piece.thicknessMm'),
  showFace: choice('The face that shows', ['outside', 'inside', 'both']).default('outside'),
  insert: group('the insert', {
    diameterMm: number('piece.insert.diameterMm'),
    clearanceMm: number('piece.insert.clearanceMm').default(0),
  }).exactOptional(),
});

const stock = group('the stock', {
  wood: text('Wood', 'Give the name of the wood.').default(DEFAULT_STOCK.wood),
  stripLengthMm: number('stock.stripLengthMm').exactOptional(),
  stripCount: number('stock.stripCount').default(DEFAULT_STOCK.stripCount),
  trimMm: number('stock.trimMm').default(DEFAULT_STOCK.trimMm),
  holdMm: number('stock.holdMm').default(DEFAULT_STOCK.holdMm),
  thicknessSigmaMm: number('stock.thicknessSigmaMm').default(DEFAULT_STOCK.thicknessSigmaMm),
  cupMm: number('stock.cupMm').default(DEFAULT_STOCK.cupMm),
  edgeTaperDeg: number('stock.edgeTaperDeg').default(DEFAULT_STOCK.edgeTaperDeg),
});

const limits = group('the limits', {
  showGapMm: number('limits.showGapMm').default(DEFAULT_LIMITS.showGapMm),
  hiddenGapMm: number('limits.hiddenGapMm').default(DEFAULT_LIMITS.hiddenGapMm),
  remedyGapMm: number('limits.remedyGapMm').default(DEFAULT_LIMITS.remedyGapMm),
});

const costs = group('the costs', {
  batch: number('costs.batch').default(DEFAULT_COSTS.batch),
  stockPerRing: number('costs.stockPerRing').default(DEFAULT_COSTS.stockPerRing),
  testStockPerRound: number('costs.testStockPerRound').default(DEFAULT_COSTS.testStockPerRound),
  ratePerHour: number('costs.ratePerHour').default(DEFAULT_COSTS.ratePerHour),
  remedyMinutes: number('costs.remedyMinutes').default(DEFAULT_COSTS.remedyMinutes),
  assemblyMinutes: number('costs.assemblyMinutes').default(DEFAULT_COSTS.assemblyMinutes),
});

const tilt = group('the tilt', {
  biasDeg: number('methods[].tilt.biasDeg').default(DEFAULT_TILT.biasDeg),
  sharedDeg: number('methods[].tilt.sharedDeg').default(DEFAULT_TILT.sharedDeg),
  shape: choice('The shape of the tilt error', ['normal', 'uniform']).default(DEFAULT_TILT.shape),
  sideDeg: number('methods[].tilt.sideDeg').default(DEFAULT_TILT.sideDeg),
  perCutDeg: number('methods[].tilt.perCutDeg').default(DEFAULT_TILT.perCutDeg),
  reset: choice('When the tilt is set', ['once', 'everyCut']).default(DEFAULT_TILT.reset),
  aimDeg: number('methods[].tilt.aimDeg').default(DEFAULT_TILT.aimDeg),
});

const guide = group('the guide', {
  zeroDeg: number('methods[].guide.zeroDeg').default(DEFAULT_GUIDE.zeroDeg),
  settingDeg: number('methods[].guide.settingDeg').default(DEFAULT_GUIDE.settingDeg),
  slotDeg: number('methods[].guide.slotDeg').default(DEFAULT_GUIDE.slotDeg),
  seatMm: number('methods[].guide.seatMm').default(DEFAULT_GUIDE.seatMm),
  faceMm: number('methods[].guide.faceMm').default(DEFAULT_GUIDE.faceMm),
});

const width = group('the width', {
  by: choice('What fixes the width', ['markedLine', 'fixedStop', 'markedEach']).default(DEFAULT_WIDTH.by),
  sharedMm: number('methods[].width.sharedMm').default(DEFAULT_WIDTH.sharedMm),
  perCutMm: number('methods[].width.perCutMm').default(DEFAULT_WIDTH.perCutMm),
  driftMeanMm: number('methods[].width.driftMeanMm').default(DEFAULT_WIDTH.driftMeanMm),
  driftSigmaMm: number('methods[].width.driftSigmaMm').default(DEFAULT_WIDTH.driftSigmaMm),
  chipChance: number('methods[].width.chipChance').default(DEFAULT_WIDTH.chipChance),
  chipMeanMm: number('methods[].width.chipMeanMm').default(DEFAULT_WIDTH.chipMeanMm),
});

const blade = group('the blade', {
  diameterMm: number('methods[].blade.diameterMm').default(DEFAULT_BLADE.diameterMm),
  plateMm: number('methods[].blade.plateMm').default(DEFAULT_BLADE.plateMm),
  collarMm: number('methods[].blade.collarMm').default(DEFAULT_BLADE.collarMm),
  kerfMm: number('methods[].blade.kerfMm').default(DEFAULT_BLADE.kerfMm),
  kerfSigmaMm: number('methods[].blade.kerfSigmaMm').default(DEFAULT_BLADE.kerfSigmaMm),
  stiffnessNPerMm: number('methods[].blade.stiffnessNPerMm').nullable().default(DEFAULT_BLADE.stiffnessNPerMm),
  forceMeanN: number('methods[].blade.forceMeanN').default(DEFAULT_BLADE.forceMeanN),
  forceSigmaN: number('methods[].blade.forceSigmaN').default(DEFAULT_BLADE.forceSigmaN),
  forceWithinCutN: number('methods[].blade.forceWithinCutN').default(DEFAULT_BLADE.forceWithinCutN),
  snagChance: number('methods[].blade.snagChance').default(DEFAULT_BLADE.snagChance),
  snagMeanN: number('methods[].blade.snagMeanN').default(DEFAULT_BLADE.snagMeanN),
  recutAboveMm: number('methods[].blade.recutAboveMm').nullable().default(DEFAULT_BLADE.recutAboveMm),
});

const assembly = group('the assembly', {
  by: choice('The way of assembly', ['allAtOnce', 'oneByOne', 'twoHalves']).default(DEFAULT_ASSEMBLY.by),
  freeJoints: number('methods[].assembly.freeJoints').default(DEFAULT_ASSEMBLY.freeJoints),
  ends: choice('How the ends are held', ['free', 'flush']).default(DEFAULT_ASSEMBLY.ends),
  pullUpMm: number('methods[].assembly.pullUpMm').default(DEFAULT_ASSEMBLY.pullUpMm),
  truingMm: number('methods[].assembly.truingMm').default(DEFAULT_ASSEMBLY.truingMm),
});

const TEST_KINDS = ['none', 'fullRing', 'halfRing', 'twoHalvesTogether', 'pair'] as const;

const test = group('the test cuts', {
  kind: choice('The kind of test piece', TEST_KINDS).default(DEFAULT_TEST.kind),
  maxRounds: number('methods[].test.maxRounds').default(DEFAULT_TEST.maxRounds),
  readingMm: number('methods[].test.readingMm').default(DEFAULT_TEST.readingMm),
  stopWhenMm: number('methods[].test.stopWhenMm').default(DEFAULT_TEST.stopWhenMm),
  dialDeg: number('methods[].test.dialDeg').default(DEFAULT_TEST.dialDeg),
  dialShare: number('methods[].test.dialShare').default(DEFAULT_TEST.dialShare),
  armMm: number('methods[].test.armMm').exactOptional(),
});

const minutes = group('the minutes', {
  setUp: number('methods[].minutes.setUp').default(DEFAULT_MINUTES.setUp),
  perCut: number('methods[].minutes.perCut').default(DEFAULT_MINUTES.perCut),
  perTestRound: number('methods[].minutes.perTestRound').default(DEFAULT_MINUTES.perTestRound),
});

const method = group('the method', {
  name: text('Name of the method', 'Give each method a name.'),
  sequence: choice('Cut sequence', ['flipFace', 'swapSides']).default('flipFace'),
  wideFace: choice('The wide face', ['down', 'up']).default('down'),
  tilt: tilt.prefault({}),
  guide: guide.prefault({}),
  width: width.prefault({}),
  blade: blade.prefault({}),
  assembly: assembly.prefault({}),
  test: test.prefault({}),
  minutes: minutes.prefault({}),
});

const run = group('the run', {
  trials: number('run.trials').default(DEFAULT_RUN.trials),
  seed: number('run.seed').default(DEFAULT_RUN.seed),
  rule: choice('The closing rule', ['contact', 'touch']).default(DEFAULT_RUN.rule),
  settle: group('the settling', { relative: number('run.settle.relative') }).exactOptional(),
});

/** Longest of the maker's own words, so that a sheet stays one page. */
export const EXPLAIN_LENGTHS = { title: 120, client: 120, closing: 800 } as const;

function shortText(label: string, most: number) {
  const advice = `Give text of up to ${most} characters.`;
  return text(label, advice)
    .max(most, { error: (issue) => `${label} has ${String(issue.input).length} characters. ${advice}` })
    .exactOptional();
}

function shown(label: string) {
  const error = (issue: { readonly input?: unknown }) =>
    `${label} is ${valueText(issue.input)}. Give true to show it or false to leave it out.`;
  return z.boolean({ error }).exactOptional();
}

const explain = group('the words for the sheets', {
  title: shortText('Title of the sheet', EXPLAIN_LENGTHS.title),
  client: shortText('The client’s line', EXPLAIN_LENGTHS.client),
  closing: shortText('The closing words', EXPLAIN_LENGTHS.closing),
  method: text('The method on the sheets', 'Give the name of a method.').exactOptional(),
  show: group('what the sheet shows', {
    drawing: shown('The drawing'),
    why: shown('Why errors add up'),
    dots: shown('The dots'),
    making: shown('How it is made'),
    eye: shown('What an eye sees'),
    season: shown('What the seasons do'),
    remains: shown('What remains'),
  }).exactOptional(),
});

const METHODS_WANTED = 'Give a list with at least one named method.';

/** Input: the parsed JSON of a file of this version. Output: the document with every default filled in. */
export const projectSchema: z.ZodType<Project> = group('the project', {
  format: z.literal(FILE_FORMAT, { error: (issue) => choiceSentence('Format', [FILE_FORMAT], issue.input) }),
  version: z.literal(FILE_VERSION, { error: (issue) => choiceSentence('Version', [`${FILE_VERSION}`], issue.input) }),
  title: text('Title', 'Give the piece a title.'),
  display: choice('Display', ['metric', 'inch']).default('metric'),
  piece,
  stock: stock.prefault({}),
  limits: limits.prefault({}),
  costs: costs.prefault({}),
  methods: z
    .array(method, {
      error: (issue) =>
        issue.input === undefined
          ? `Methods are missing. ${METHODS_WANTED}`
          : `Methods is ${valueText(issue.input)}, not a list. ${METHODS_WANTED}`,
    })
    .min(1, { error: `Methods is an empty list. ${METHODS_WANTED}` }),
  run: run.prefault({}),
  explain: explain.exactOptional(),
});
