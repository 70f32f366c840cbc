/** The same project and seed give the same digits, however the work is divided. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Project } from '../../sim/project/document';
import { exampleProject, planterProject } from '../../sim/project/example';
import { blockSteps, runBlock } from '../../sim/run/block';
import { BLOCK_TRIALS, blockLoop, finish } from '../../sim/run/block-loop';
import type { BlockResult } from '../../sim/run/block-result';
import { methodPlan, type PlanOptions } from '../../sim/run/plan';
import { runMethod } from '../../sim/run/run-method';
import { singleRing } from '../../sim/run/single-ring';
import type { Engine } from '../../sim/run/stages';
import { type MethodChanges, projectWith } from '../support/projects';

const RINGS = 300;

const EVERYTHING: MethodChanges = {
  sequence: 'swapSides',
  wideFace: 'up',
  tilt: { biasDeg: 0.02, sharedDeg: 0.06, shape: 'uniform', sideDeg: 0.02, perCutDeg: 0.03 },
  guide: { zeroDeg: 0.05, settingDeg: 0.05, slotDeg: 0.03, seatMm: 0.05 },
  width: { by: 'fixedStop', sharedMm: 0.2, perCutMm: 0.1, driftSigmaMm: 0.01, chipChance: 0.05, chipMeanMm: 0.3 },
  blade: { kerfSigmaMm: 0.03, forceSigmaN: 2, forceWithinCutN: 1, snagChance: 0.02, stiffnessNPerMm: 40 },
};

const TESTED: MethodChanges = { ...EVERYTHING, test: { kind: 'fullRing', maxRounds: 2, stopWhenMm: 0.2 } };
const HALVES: MethodChanges = { ...EVERYTHING, assembly: { by: 'twoHalves', truingMm: 0.03 } };
const ONE_BY_ONE: MethodChanges = { ...EVERYTHING, assembly: { by: 'oneByOne' } };
const METHODS = { untested: EVERYTHING, tested: TESTED, 'in two halves': HALVES, 'one by one': ONE_BY_ONE };

const splayed = (method: MethodChanges): Project =>
  projectWith({ piece: { slopeDeg: 20, heightMm: 80 }, stock: { cupMm: 0.01, edgeTaperDeg: 0.02 }, method });

const block = (project: Project, seed: number, index: number, options: PlanOptions = {}): BlockResult =>
  runBlock(methodPlan(project, 0, options), seed, index, RINGS);

/** The names of what differs, bit for bit; comparing by element would take seconds. */
function differing(a: BlockResult, b: BlockResult): string[] {
  const bits = (value: BlockResult[keyof BlockResult]) =>
    typeof value === 'number'
      ? Buffer.from(String(value))
      : Buffer.from(value.buffer, value.byteOffset, value.byteLength);
  return (Object.keys(a) as (keyof BlockResult)[]).filter((key) => !bits(a[key]).equals(bits(b[key])));
}

describe.each(Object.entries(METHODS))('a method %s', (_, method) => {
  const project = splayed(method);

  test.each(['collapsed', 'plain'] as Engine[])(
    'gives the same bits for the same seed and block, %s engine',
    (engine) => {
      const made = block(project, 7, 3, { engine });
      expect(differing(made, block(project, 7, 3, { engine }))).toEqual([]);
      expect(differing(made, block(project, 8, 3, { engine }))).toContain('mouthMm');
      expect(differing(made, block(project, 7, 2, { engine }))).toContain('mouthMm');
    },
  );

  test('gives the same bits whatever blocks the same plan made before, in any order', () => {
    const plan = methodPlan(project, 0);
    const inOrder = [0, 1, 2, 3].map((index) => block(project, 7, index));
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }), (order) => {
        for (const index of order) expect(differing(runBlock(plan, 7, index, RINGS), inOrder[index]!)).toEqual([]);
      }),
      { seed: 61, numRuns: 4 },
    );
  });

  test('has the same gaps whether or not sizes are asked for', () => {
    const [plain, sized] = [block(project, 7, 0, { sizes: false }), block(project, 7, 0, { sizes: true })];
    expect(differing(plain, sized)).toEqual(['clearOpeningMm', 'outOfRoundMm', 'stepMm']);
    expect([plain.clearOpeningMm.length, sized.clearOpeningMm.length]).toEqual([0, RINGS]);
  });
});

describe('seed 0', () => {
  test('is a seed like any other', () => {
    const project = splayed(EVERYTHING);
    const zero = block(project, 0, 0);
    expect(differing(zero, block(project, 0, 0))).toEqual([]);
    expect(differing(zero, block(project, 1, 0))).toContain('mouthMm');
    expect(new Set(zero.mouthMm).size).toBe(RINGS);
    const run = finish(runMethod({ ...project, run: { ...project.run, seed: 0, trials: 200 } }, 0));
    expect(run.prediction.mouthMm.sd).toBeGreaterThan(0);
  });
});

describe('a source added', () => {
  test('leaves all other draws as they were, cut by cut: what two sources do is the sum of what each does', () => {
    const sources: MethodChanges[] = [
      { tilt: { sharedDeg: 0.1 } },
      { tilt: { perCutDeg: 0.1 } },
      { tilt: { sharedDeg: 0.2, shape: 'uniform' } },
      { guide: { seatMm: 0.1 } },
      { width: { by: 'fixedStop', driftSigmaMm: 0.1 } },
      { width: { by: 'fixedStop', chipChance: 0.1, chipMeanMm: 0.4 } },
      { blade: { kerfSigmaMm: 0.1 } },
    ];
    const outputs = (method: MethodChanges): Float64Array => {
      const project = projectWith({
        piece: { slopeDeg: 20, heightMm: 80 },
        method: { sequence: 'swapSides', ...method },
      });
      const plan = methodPlan(project, 0, { engine: 'plain' });
      const out = new Float64Array(RINGS * plan.matrix.width);
      plan.whole.open(7, 0, 'piece')(out, RINGS);
      return out;
    };
    sources.forEach((first, i) => {
      for (const second of sources.slice(i + 1)) {
        const together = outputs({
          tilt: { ...first.tilt, ...second.tilt },
          guide: { ...first.guide, ...second.guide },
          width: { ...first.width, ...second.width },
          blade: { ...first.blade, ...second.blade },
        });
        // two kinds of shared tilt are one figure in the document
        if (first.tilt?.sharedDeg && second.tilt?.sharedDeg) continue;
        const [one, other] = [outputs(first), outputs(second)];
        const apart = together.map((value, k) => Math.abs(value - one[k]! - other[k]!));
        expect(Math.max(...apart)).toBeLessThan(1e-9);
      }
    });
  });
});

describe('a source left out', () => {
  test('leaves the luck of the others as it was, though fewer numbers describe the ring', () => {
    const gaps = (method: MethodChanges, perfect: PlanOptions['perfect'] = new Set()) =>
      block(projectWith({ method }), 7, 0, { perfect }).showGapMm;
    const tilted: MethodChanges = { tilt: { sharedDeg: 0.1 }, assembly: { ends: 'flush' } };
    // out of square the guide only makes an upright ring conical
    const both: MethodChanges = { ...tilted, guide: { zeroDeg: 0.2 } };
    for (const other of [gaps(tilted), gaps(both, new Set(['guideZero']))]) {
      const apart = gaps(both).map((gap, k) => Math.abs(gap - other[k]!));
      expect(Math.max(...apart)).toBeLessThan(1e-7);
    }
  });
});

describe('a whole run', () => {
  const project: Project = { ...exampleProject(), run: { trials: 2 * BLOCK_TRIALS + 123, seed: 7, rule: 'contact' } };
  const small = (options: Parameters<typeof runMethod>[2] = {}, method = 2) =>
    finish(runMethod(project, method, options));

  test('gives the same digits twice, in everything it says', () => {
    expect(JSON.stringify(small())).toBe(JSON.stringify(small()));
    expect(small({ seed: 8 }).prediction.showGapMm).not.toEqual(small().prediction.showGapMm);
  });

  test('does exactly the trials asked for, and every ring has one grade', () => {
    const { prediction, grades, sample, byRing } = small();
    expect([prediction.trials, prediction.stopReason]).toEqual([2 * BLOCK_TRIALS + 123, 'trial-limit']);
    expect(grades.good + grades.rework + grades.scrap).toBe(prediction.trials);
    expect(prediction.yield.value).toBe(grades.good / prediction.trials);
    expect(sample.showGapMm).toHaveLength(prediction.trials);
    expect(byRing.good.reduce((sum, good) => sum + good, 0)).toBe(grades.good);
    expect(byRing.showGapMm.slice().sort()).toEqual(sample.showGapMm);
    expect(small({ trials: 150 }).prediction.trials).toBe(150);
  });

  test('has for its sums what its blocks have, block by block', () => {
    const plan = methodPlan(project, 2);
    const { blocks } = finish(
      blockLoop({ trials: project.run.trials, run: (index, rings) => blockSteps(plan, 7, index, rings) }),
    );
    const gaps = blocks.flatMap((b) => [...b.showGapMm]);
    const { byRing, prediction } = small();
    expect([...byRing.showGapMm]).toEqual(gaps);
    expect(prediction.showGapMm.mean).toBeCloseTo(gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length, 12);
    const closed = blocks.reduce((sum, b) => sum + b.closes.reduce((s, c) => s + c, 0), 0);
    expect(prediction.willNotClose.value).toBeCloseTo(1 - closed / gaps.length, 12);
    expect(prediction.jointShowGapP95Mm).toHaveLength(project.piece.sides);
    expect(Math.max(...prediction.jointShowGapP95Mm)).toBeLessThanOrEqual(prediction.showGapMm.p95);
  });

  test('that is stopped keeps what is done and says so', () => {
    const steps = runMethod(project, 2, { shouldStop: () => ringsDone >= 2 * BLOCK_TRIALS });
    let ringsDone = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) ringsDone = step.value.ringsDone;
    const { prediction, sample } = step.value;
    expect([prediction.trials, prediction.stopReason]).toEqual([2 * BLOCK_TRIALS, 'cancelled']);
    expect(sample.showGapMm.slice()).toEqual(small({ trials: 2 * BLOCK_TRIALS }).sample.showGapMm.slice());
  });

  test('that may settle stops before its trials run out, and not before it has seen ten blocks', () => {
    const settling: Project = {
      ...project,
      run: { trials: 1_000_000, seed: 7, rule: 'touch', settle: { relative: 0.05 } },
    };
    const { prediction } = finish(runMethod(settling, 1));
    expect(prediction.stopReason).toBe('settled');
    expect(prediction.trials).toBeGreaterThanOrEqual(10 * BLOCK_TRIALS);
    expect(prediction.trials).toBeLessThan(1_000_000);
    // a finer wish takes more trials; too fine a wish runs into the limit
    const finer = finish(
      runMethod({ ...settling, run: { ...settling.run, settle: { relative: 0.004 } } }, 1),
    ).prediction;
    expect(finer.trials).toBeGreaterThan(prediction.trials);
    const limited = { ...settling.run, trials: 11 * BLOCK_TRIALS, settle: { relative: 0.0005 } };
    const unsettled = finish(runMethod({ ...settling, run: limited }, 1)).prediction;
    expect([unsettled.trials, unsettled.stopReason]).toEqual([11 * BLOCK_TRIALS, 'trial-limit']);
  });

  test('says which rule it used, and that one by one is always by contact', () => {
    const used = (method: number, rule: 'touch' | 'contact') =>
      finish(runMethod(planterProject(), 0, { trials: 100, rule })).prediction.rule === rule &&
      finish(runMethod(project, method, { trials: 100, rule })).prediction.rule;
    expect(used(1, 'touch')).toBe('touch');
    expect(used(3, 'touch')).toBe('contact');
    expect(used(3, 'contact')).toBe('contact');
  });

  test('can be looked at ring by ring: the ring drawn again is the ring of the run', () => {
    for (const method of [1, 2, 3]) {
      const { byRing } = small({}, method);
      for (const ring of [0, 77, BLOCK_TRIALS - 1, BLOCK_TRIALS, 2 * BLOCK_TRIALS + 122]) {
        const { joints } = singleRing(project, method, ring);
        expect(Math.max(...joints.map(({ outerMm }) => outerMm))).toBe(byRing.showGapMm[ring]);
      }
    }
    expect(() => singleRing(project, 1, 2 * BLOCK_TRIALS + 123)).toThrow('is not one of the');
  });

  test('tells its progress block by block, and stays at the whole while set-ups are costed', () => {
    const told = [...runMethod(project, 1)];
    const whole = 2 * BLOCK_TRIALS + 123;
    expect(told.every(({ method, ringsWanted }) => method === 1 && ringsWanted === whole)).toBe(true);
    const ringsDone = told.map((progress) => progress.ringsDone);
    expect([...new Set(ringsDone)]).toEqual([0, BLOCK_TRIALS, 2 * BLOCK_TRIALS, whole]);
    expect(ringsDone).toEqual(ringsDone.toSorted((a, b) => a - b));
    expect(ringsDone.filter((rings) => rings === whole).length).toBeGreaterThan(10);
  });

  test('of a method that is not there is refused', () => {
    expect(() => methodPlan(project, 9)).toThrow('Method 9 is not one of the 4 in the project.');
  });
});

describe('two methods on one seed', () => {
  test('meet the same luck: their gaps go together', () => {
    const gaps = (sharedMm: number) =>
      block(splayed({ tilt: { sharedDeg: 0.1 }, width: { by: 'fixedStop', sharedMm } }), 7, 0).mouthMm;
    const [a, b] = [gaps(0.1), gaps(0.11)];
    let [ab, aa, bb] = [0, 0, 0];
    a.forEach((value, k) => {
      ab += value * b[k]!;
      aa += value * value;
      bb += b[k]! * b[k]!;
    });
    expect(ab / Math.sqrt(aa * bb)).toBeGreaterThan(0.99);
  });
});
