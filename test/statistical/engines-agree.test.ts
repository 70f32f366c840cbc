/**
 * The collapsed engine, which draws a few numbers for a whole ring, and the plain engine, which draws every error of
 * every cut, give the same distributions. Different seeds, so that the samples are independent. Each comparison rings a
 * false alarm once in 100,000 seeds by distance and once in 100,000 by spread; with some 400 comparisons that is one
 * seed in 250.
 */
import { describe, expect, test } from 'vitest';
import type { Stock } from '../../sim/project/document';
import { runBlock } from '../../sim/run/block';
import type { BlockResult } from '../../sim/run/block-result';
import { methodPlan, type PlanOptions } from '../../sim/run/plan';
import { type MethodChanges, type ProjectChanges, projectWith } from '../support/projects';
import { distanceLimit, spreadDifference, twoSampleDistance } from '../support/two-samples';

const RINGS = 4000;
const FALSE_ALARM = 1e-5;
/** Two-sided 1 in 100,000 of a normal. */
const SPREAD_LIMIT = 4.42;

const FIGURES = ['showGapMm', 'hiddenGapMm', 'mouthMm', 'clearOpeningMm'] as const;

type Figures = Pick<BlockResult, (typeof FIGURES)[number]>;

function rings(changes: ProjectChanges, seed: number, options: PlanOptions): Figures {
  const project = projectWith({
    ...changes,
    piece: {
      sides: 6,
      slopeDeg: 20,
      size: { by: 'staveWidth', mm: 110 },
      heightMm: 90,
      thicknessMm: 16,
      ...changes.piece,
    },
  });
  return runBlock(methodPlan(project, 0, options), seed, 0, RINGS);
}

/** To a nanometre, so that what rounding leaves of nothing compares equal to nothing. */
const rounded = (sample: Float64Array): Float64Array => sample.map((value) => Math.round(value * 1e6) / 1e6);

function differences(first: Figures, second: Figures): string[] {
  return FIGURES.flatMap((figure) => {
    const [a, b] = [rounded(first[figure]), rounded(second[figure])];
    const distance = twoSampleDistance(a, b);
    const spread = spreadDifference(a, b);
    const apart = distance > distanceLimit(RINGS, RINGS, FALSE_ALARM) || Math.abs(spread) > SPREAD_LIMIT;
    return apart ? [`${figure}: distance ${distance}, spread ${spread} standard errors`] : [];
  });
}

interface Source extends MethodChanges {
  stock?: Partial<Stock>;
}

const STOP = { by: 'fixedStop' } as const;
const SOURCES: Record<string, Source> = {
  'shared tilt': { tilt: { sharedDeg: 0.1, biasDeg: 0.03, aimDeg: -0.01 } },
  'uniform shared tilt': { tilt: { sharedDeg: 0.15, shape: 'uniform' } },
  'tilt set anew for every cut': { tilt: { sharedDeg: 0.1, reset: 'everyCut' } },
  'uniform tilt set anew for every cut': { tilt: { sharedDeg: 0.15, shape: 'uniform', reset: 'everyCut' } },
  'tilt from side to side': { tilt: { sideDeg: 0.1 } },
  'tilt from cut to cut': { tilt: { perCutDeg: 0.1 } },
  'guide out of square': { guide: { zeroDeg: 0.2 } },
  'guide setting': { guide: { settingDeg: 0.2 } },
  'guide slot': { guide: { slotDeg: 0.2 } },
  seat: { guide: { seatMm: 0.3 } },
  cup: { stock: { cupMm: 0.05, stripCount: 2 } },
  'edge taper': { stock: { edgeTaperDeg: 0.1, stripCount: 2 } },
  'shared width': { width: { ...STOP, sharedMm: 0.3 } },
  'width marked for each': { width: { by: 'markedEach', sharedMm: 0.3 } },
  'width from cut to cut': { width: { ...STOP, perCutMm: 0.3 } },
  drift: { width: { ...STOP, driftMeanMm: 0.02, driftSigmaMm: 0.1 } },
  chips: { width: { ...STOP, chipChance: 0.05, chipMeanMm: 0.5 } },
  kerf: { blade: { kerfSigmaMm: 0.2 } },
  thickness: { wideFace: 'up', width: STOP, stock: { thicknessSigmaMm: 0.4 } },
  deflection: { blade: { forceMeanN: 3, forceSigmaN: 6, stiffnessNPerMm: 40 } },
  bulge: { blade: { forceWithinCutN: 4, stiffnessNPerMm: 40 } },
  snags: { blade: { snagChance: 0.05, snagMeanN: 8, stiffnessNPerMm: 40, recutAboveMm: 0.3 } },
};

const EVERYTHING: MethodChanges = {
  wideFace: 'up',
  tilt: { biasDeg: 0.02, sharedDeg: 0.06, sideDeg: 0.02, perCutDeg: 0.03, aimDeg: 0.01 },
  guide: { zeroDeg: 0.05, settingDeg: 0.05, slotDeg: 0.03, seatMm: 0.05 },
  width: {
    ...STOP,
    sharedMm: 0.2,
    perCutMm: 0.1,
    driftMeanMm: 0.005,
    driftSigmaMm: 0.01,
    chipChance: 0.02,
    chipMeanMm: 0.3,
  },
  blade: {
    kerfSigmaMm: 0.03,
    forceMeanN: 1,
    forceSigmaN: 2,
    forceWithinCutN: 1,
    snagChance: 0.01,
    stiffnessNPerMm: 40,
  },
};
const STRIPS: Partial<Stock> = { cupMm: 0.01, edgeTaperDeg: 0.02, thicknessSigmaMm: 0.1, stripCount: 2 };

describe.each(['flipFace', 'swapSides'] as const)('with %s, the two engines agree', (sequence) => {
  const agree = (changes: ProjectChanges) => {
    const plain = rings(changes, 101, { engine: 'plain' });
    const collapsed = rings(changes, 202, { engine: 'collapsed' });
    expect(differences(plain, collapsed)).toEqual([]);
  };

  test.each(Object.entries(SOURCES))('on %s alone', (_, { stock, ...method }) => {
    agree({ ...(stock && { stock }), method: { ...method, sequence } });
  });

  const together: ProjectChanges = { stock: STRIPS, method: { ...EVERYTHING, sequence } };

  test('on everything together, all at once', () => {
    agree(together);
  });

  test('on everything together, glued one by one, both faces showing', () => {
    agree({
      ...together,
      piece: { showFace: 'both' },
      method: { ...together.method, assembly: { by: 'oneByOne', freeJoints: 3, pullUpMm: 0.02 } },
    });
  });

  test('on everything together, in two halves trued flat, the inside showing', () => {
    agree({
      ...together,
      piece: { showFace: 'inside' },
      method: { ...together.method, assembly: { by: 'twoHalves', truingMm: 0.03 } },
    });
  });

  test('on everything together after test cuts', () => {
    const testCuts = { kind: 'fullRing', maxRounds: 3, readingMm: 0.1, stopWhenMm: 0.4 } as const;
    agree({ ...together, method: { ...together.method, test: testCuts } });
  });

  test('no longer when one of them has a tenth more shared tilt, or strips a tenth more bowed', () => {
    const tilted = (sharedDeg: number): ProjectChanges => ({ method: { sequence, tilt: { sharedDeg } } });
    const plain = rings(tilted(0.1), 101, { engine: 'plain' });
    expect(differences(plain, rings(tilted(0.11), 202, { engine: 'collapsed' }))).not.toEqual([]);
    const bowed = (forceWithinCutN: number): ProjectChanges => ({
      method: { sequence, blade: { forceWithinCutN, stiffnessNPerMm: 40 } },
    });
    const bows = rings(bowed(4), 101, { engine: 'plain' });
    // turned over, the bows nest, except where the strip begins and ends
    expect(differences(bows, rings(bowed(4.4), 202, { engine: 'collapsed' }))).not.toEqual([]);
  });
});
