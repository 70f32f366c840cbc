/** Worked examples to start from. Pieces, methods and figures are invented for the purpose. */
import { DEFAULT_LIMITS, DEFAULT_STOCK, defaultMethod } from './defaults';
import type { Method, Project } from './document';
import { FILE_FORMAT, FILE_VERSION } from './keys';
import { applyPreset, applyStockPreset } from './presets';

/** Guided by eye: tilt from a drafted angle, gauge with a fence, pencil line, thin blade, tape and fold, no test. */
function markedLine(): Method {
  let method = defaultMethod('Marked line');
  method = applyPreset(method, 'tilt', 'draftedAngle');
  method = applyPreset(method, 'guide', 'gaugeWithFence');
  method = applyPreset(method, 'width', 'pencilLine');
  method = applyPreset(method, 'blade', 'thinKerf');
  method = applyPreset(method, 'assembly', 'tapeAndFold');
  return {
    ...method,
    sequence: 'swapSides',
    wideFace: 'up',
    test: { ...method.test, armMm: 70 },
    minutes: { setUp: 10, perCut: 1, perTestRound: 15 },
  };
}

/** Everything held but the tilt, which is read off the saw: a sled, a stop, a stiff blade. */
function fixedStop(): Method {
  let method = defaultMethod('Fixed stop');
  method = applyPreset(method, 'tilt', 'sawScale');
  method = applyPreset(method, 'guide', 'sled');
  method = applyPreset(method, 'width', 'plainStop');
  method = applyPreset(method, 'blade', 'fullKerf');
  method = applyPreset(method, 'assembly', 'tapeAndFold');
  return { ...method, minutes: { setUp: 20, perCut: 0.6, perTestRound: 15 } };
}

function fixedStopTested(): Method {
  return { ...applyPreset(fixedStop(), 'test', 'dryRing'), name: 'Fixed stop, tested ring' };
}

/** The tested cuts, put together the other way. */
function gluedOneByOne(): Method {
  return { ...applyPreset(fixedStopTested(), 'assembly', 'oneByOne'), name: 'Glued one by one' };
}

/** Twelve upright oak staves around a glass, four ways of making it. A fresh copy at every call. */
export function exampleProject(): Project {
  return {
    format: FILE_FORMAT,
    version: FILE_VERSION,
    title: 'Lantern base, twelve staves',
    display: 'metric',
    piece: {
      sides: 12,
      slopeDeg: 0,
      grain: 'alongRing',
      size: { by: 'outsideFlats', mm: 280 },
      heightMm: 140,
      thicknessMm: 15,
      showFace: 'outside',
      insert: { diameterMm: 236, clearanceMm: 3 },
    },
    stock: { ...applyStockPreset(DEFAULT_STOCK, 'planedHere'), wood: 'oak', stripLengthMm: 1250 },
    limits: { ...DEFAULT_LIMITS },
    costs: {
      batch: 1,
      stockPerRing: 42,
      testStockPerRound: 6,
      ratePerHour: 32,
      remedyMinutes: 25,
      assemblyMinutes: 40,
    },
    methods: [markedLine(), fixedStop(), fixedStopTested(), gluedOneByOne()],
    run: { trials: 100_000, seed: 7, rule: 'contact' },
  };
}

/** Six splayed walnut staves: tilt and swing both have to be found. A fresh copy at every call. */
export function planterProject(): Project {
  const gauge = { ...applyPreset(markedLine(), 'blade', 'fullKerf'), name: 'Gauge and pencil' };
  const sled = { ...applyPreset(fixedStop(), 'assembly', 'ratchetStrap'), name: 'Sled and stop' };
  const tested = { ...applyPreset(sled, 'test', 'halfRing'), name: 'Sled and stop, half ring tested' };
  return {
    ...exampleProject(),
    title: 'Splayed planter, six staves',
    piece: {
      sides: 6,
      slopeDeg: 15,
      grain: 'alongRing',
      size: { by: 'outsideCorners', mm: 360 },
      heightMm: 180,
      thicknessMm: 18,
      showFace: 'outside',
    },
    stock: { ...applyStockPreset(DEFAULT_STOCK, 'boughtPlaned'), wood: 'walnut', stripCount: 2 },
    limits: { showGapMm: 0.2, hiddenGapMm: 0.5, remedyGapMm: 0.8 },
    methods: [gauge, sled, tested],
  };
}

/** A flat frame of eight members: no tilt at all, the swing carries everything. A fresh copy at every call. */
export function mirrorFrameProject(): Project {
  const gauge = { ...applyPreset(markedLine(), 'assembly', 'strapOnBoard'), name: 'Gauge and pencil' };
  const sled = { ...applyPreset(fixedStop(), 'assembly', 'strapOnBoard'), name: 'Sled and stop' };
  const halves = { ...applyPreset(fixedStop(), 'assembly', 'twoHalves'), name: 'Sled and stop, two halves' };
  return {
    ...exampleProject(),
    title: 'Mirror frame, eight sides',
    piece: {
      sides: 8,
      slopeDeg: 90,
      grain: 'alongRing',
      size: { by: 'clearOpening', mm: 400 },
      heightMm: 60,
      thicknessMm: 20,
      showFace: 'both',
      insert: { diameterMm: 396, clearanceMm: 2 },
    },
    stock: { ...applyStockPreset(DEFAULT_STOCK, 'planedHere'), wood: 'cherry', stripCount: 2 },
    limits: { showGapMm: 0.12, hiddenGapMm: 0.12, remedyGapMm: 0.4 },
    methods: [gauge, sled, halves],
  };
}

/** The examples by the name the command line knows them by. */
export const EXAMPLES: Readonly<Record<string, () => Project>> = {
  lantern: exampleProject,
  planter: planterProject,
  'mirror-frame': mirrorFrameProject,
};
