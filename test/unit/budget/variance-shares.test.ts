/** Shares of the variance by source, by hand and against rings drawn cut by cut. */
import { describe, expect, test } from 'vitest';
import { openingVariances } from '../../../sim/budget/variance-shares';
import { RADIANS_PER_DEGREE } from '../../../sim/geometry/ring';
import type { SourceName } from '../../../sim/project/document';
import { type MethodPlan, methodPlan } from '../../../sim/run/plan';
import { type MethodChanges, projectWith } from '../../support/projects';

/** By hand: joint length of the test piece, 18 / cos 22.5°. */
const JOINT_MM = 18 / Math.cos(Math.PI / 8);
const SIGMA = 0.1 * RADIANS_PER_DEGREE;

const plan = (method: MethodChanges, rest = {}): MethodPlan =>
  methodPlan(projectWith({ ...rest, method }), 0, { engine: 'plain' });
const variance = (method: MethodChanges, source: SourceName, leftOverDeg?: number): number =>
  openingVariances(plan(method), leftOverDeg).get(source)!;

describe('the signed opening of a joint, outer less inner edge', () => {
  // derived: all joints open alike, each by 2·L·δ
  test('has the variance (2·L·σ)² by a shared tilt, a third of it when the tilt is uniform', () => {
    expect(variance({ tilt: { sharedDeg: 0.1 } }, 'tiltShared')).toBeCloseTo((2 * JOINT_MM * SIGMA) ** 2, 12);
    const uniform = variance({ tilt: { sharedDeg: 0.1, shape: 'uniform' } }, 'tiltShared');
    expect(uniform).toBeCloseTo((2 * JOINT_MM * SIGMA) ** 2 / 3, 12);
  });

  test('follows the spread that test cuts leave of the tilt', () => {
    const method: MethodChanges = { tilt: { sharedDeg: 0.1 }, test: { kind: 'fullRing', maxRounds: 1 } };
    expect(variance(method, 'tiltShared', 0.02)).toBeCloseTo((2 * JOINT_MM * 0.2 * SIGMA) ** 2, 12);
  });

  test('loses to test cuts whatever the test piece shows of it: a side’s own tilt goes the way of the setting', () => {
    const method: MethodChanges = { tilt: { sharedDeg: 0.1, sideDeg: 0.05, perCutDeg: 0.05 } };
    const tested = { ...method, test: { kind: 'fullRing' as const, maxRounds: 1 } };
    expect(variance(method, 'tiltSide')).toBeCloseTo((2 * JOINT_MM * 0.5 * SIGMA) ** 2, 12);
    expect(variance(tested, 'tiltSide')).toBeLessThan(1e-20);
    expect(variance(tested, 'tiltPerCut')).toBeCloseTo(variance(method, 'tiltPerCut'), 12);
  });

  test('has none by a known bias, by hollows, or by an even width', () => {
    const variances = openingVariances(
      plan({ tilt: { biasDeg: 0.3 }, blade: { forceWithinCutN: 3, snagChance: 0.1 }, width: { sharedMm: 1 } }),
    );
    for (const [source, own] of variances) expect(own, source).toBeLessThan(1e-20);
  });

  // derived: a chip is short by an exponential of mean m with chance p: variance p(2 − p)·m²
  test('by chips is that of a width error of the same variance', () => {
    const chips: MethodChanges = { width: { by: 'fixedStop', chipChance: 0.2, chipMeanMm: 0.5 } };
    const perStave: MethodChanges = { width: { by: 'fixedStop', perCutMm: 0.5 * Math.sqrt(0.2 * 1.8) } };
    const splayed = { piece: { slopeDeg: 40, heightMm: 60 } };
    const of = (method: MethodChanges, source: SourceName) => openingVariances(plan(method, splayed)).get(source)!;
    expect(of(chips, 'chips')).toBeCloseTo(of(perStave, 'widthPerCut'), 12);
    expect(of(chips, 'chips')).toBeGreaterThan(1e-6);
  });

  test('of two trued halves knows truing alone: the mean of two corners less that of two others', () => {
    const method: MethodChanges = { tilt: { sharedDeg: 0.1 }, assembly: { by: 'twoHalves', truingMm: 0.03 } };
    expect([...openingVariances(plan(method))]).toEqual([['truing', 0.03 ** 2]]);
  });
});

describe('against rings drawn cut by cut', () => {
  const EVERYTHING: MethodChanges = {
    sequence: 'swapSides',
    wideFace: 'up',
    tilt: { sharedDeg: 0.06, sideDeg: 0.04, perCutDeg: 0.05 },
    guide: { zeroDeg: 0.05, settingDeg: 0.05, slotDeg: 0.03, seatMm: 0.05 },
    width: { by: 'fixedStop', sharedMm: 0.2, perCutMm: 0.1, driftSigmaMm: 0.02, chipChance: 0.05, chipMeanMm: 0.3 },
    blade: { kerfSigmaMm: 0.03, forceSigmaN: 2, stiffnessNPerMm: 40 },
  };
  const rest = {
    piece: { slopeDeg: 35, heightMm: 60 },
    stock: { cupMm: 0.02, edgeTaperDeg: 0.02, thicknessSigmaMm: 0.1 },
  };

  test.each(['allAtOnce', 'oneByOne'] as const)('every source has the variance that its draws show, %s', (by) => {
    const project = projectWith({ ...rest, method: { ...EVERYTHING, assembly: { by, freeJoints: 3 } } });
    const variances = openingVariances(methodPlan(project, 0));
    expect(variances.size).toBe(15);
    const rings = 3000;
    for (const [source, exact] of variances) {
      const others = new Set([...variances.keys()].filter((name) => name !== source));
      const alone = methodPlan(project, 0, { engine: 'plain', sizes: false, perfect: others });
      const { give } = alone.closer;
      const out = new Float64Array(rings * alone.matrix.width);
      alone.whole.open(14, 0, source)(out, rings);
      const b = (ring: number, joint: number): number => {
        let sum = 0;
        for (let k = 0; k < 6; k++) sum += give.linear[(joint * 3 + 1) * 6 + k]! * out[ring * alone.matrix.width + k]!;
        return 2 * sum;
      };
      // mean over the joints of the variance, ring by ring, so that its own standard error is at hand
      const means = give.free.length;
      const centre = Array.from(give.free, (_, f) => {
        let sum = 0;
        for (let ring = 0; ring < rings; ring++) sum += b(ring, f) / rings;
        return sum;
      });
      let [total, squares] = [0, 0];
      for (let ring = 0; ring < rings; ring++) {
        let square = 0;
        for (let f = 0; f < means; f++) square += (b(ring, f) - centre[f]!) ** 2 / means;
        total += square;
        squares += square * square;
      }
      const mean = total / rings;
      const error = Math.sqrt((squares / rings - mean * mean) / rings);
      // 4.42 standard errors: 1 in 100,000 seeds a source
      expect(Math.abs(mean - exact), `${source}: ${mean} for ${exact}`).toBeLessThan(4.42 * error + 1e-15);
    }
  });
});
