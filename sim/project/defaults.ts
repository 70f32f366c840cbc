/** What stands for every key that a file leaves out. Lengths mm, angles degrees, forces newtons, minutes. */
import type {
  Assembly,
  Blade,
  Costs,
  Guide,
  Limits,
  Method,
  Minutes,
  RunSettings,
  Stock,
  TestCuts,
  Tilt,
  Width,
} from './document';

export const DEFAULT_STOCK: Stock = {
  wood: 'other',
  stripCount: 1,
  trimMm: 15,
  holdMm: 200,
  thicknessSigmaMm: 0,
  cupMm: 0,
  edgeTaperDeg: 0,
};

export const DEFAULT_LIMITS: Limits = { showGapMm: 0.15, hiddenGapMm: 0.4, remedyGapMm: 0.5 };

export const DEFAULT_COSTS: Costs = {
  batch: 1,
  stockPerRing: 0,
  testStockPerRound: 0,
  ratePerHour: 0,
  remedyMinutes: 0,
  assemblyMinutes: 0,
};

export const DEFAULT_TILT: Tilt = {
  biasDeg: 0,
  sharedDeg: 0,
  shape: 'normal',
  sideDeg: 0,
  perCutDeg: 0,
  reset: 'once',
  aimDeg: 0,
};

export const DEFAULT_GUIDE: Guide = { zeroDeg: 0, settingDeg: 0, slotDeg: 0, seatMm: 0, faceMm: 300 };

export const DEFAULT_WIDTH: Width = {
  by: 'fixedStop',
  sharedMm: 0,
  perCutMm: 0,
  driftMeanMm: 0,
  driftSigmaMm: 0,
  chipChance: 0,
  chipMeanMm: 0,
};

export const DEFAULT_BLADE: Blade = {
  diameterMm: 250,
  plateMm: 2.2,
  collarMm: 70,
  kerfMm: 2.8,
  kerfSigmaMm: 0,
  stiffnessNPerMm: null,
  forceMeanN: 0,
  forceSigmaN: 0,
  forceWithinCutN: 0,
  snagChance: 0,
  snagMeanN: 8,
  recutAboveMm: null,
};

export const DEFAULT_ASSEMBLY: Assembly = { by: 'allAtOnce', freeJoints: 3, ends: 'free', pullUpMm: 0, truingMm: 0 };

export const DEFAULT_TEST: TestCuts = {
  kind: 'none',
  maxRounds: 0,
  readingMm: 0.1,
  stopWhenMm: 0.3,
  dialDeg: 0.01,
  dialShare: 0.15,
};

export const DEFAULT_MINUTES: Minutes = { setUp: 0, perCut: 0, perTestRound: 0 };

export const DEFAULT_RUN: RunSettings = { trials: 100_000, seed: 1, rule: 'contact' };

/** A method with nothing wrong in it: every error zero. */
export function defaultMethod(name: string): Method {
  return {
    name,
    sequence: 'flipFace',
    wideFace: 'down',
    tilt: { ...DEFAULT_TILT },
    guide: { ...DEFAULT_GUIDE },
    width: { ...DEFAULT_WIDTH },
    blade: { ...DEFAULT_BLADE },
    assembly: { ...DEFAULT_ASSEMBLY },
    test: { ...DEFAULT_TEST },
    minutes: { ...DEFAULT_MINUTES },
  };
}
