/** Distributions that are known exactly, against whole blocks of simulated rings. Ends flush, outside showing, no pull-up. */
import { describe, expect, test } from 'vitest';
import { ringMaps } from '../../sim/closure/ring-maps';
import { RADIANS_PER_DEGREE, ringGeometry } from '../../sim/geometry/ring';
import type { Rule } from '../../sim/project/document';
import { runBlock } from '../../sim/run/block';
import { methodPlan, type PlanOptions } from '../../sim/run/plan';
import { Moments } from '../../sim/statistics/moments';
import { normalCdf, normalQuantile } from '../../sim/statistics/normal-distribution';
import { quantile, sortedCopy } from '../../sim/statistics/quantiles';
import { misclosureAngle } from '../support/exact-chain';
import { countDeviation, positivePartDistance } from '../support/kolmogorov';
import { type MethodChanges, projectWith } from '../support/projects';
import { spreadDifference } from '../support/two-samples';

const RINGS = 10_000;
const N = 8;
const FLUSH = { assembly: { by: 'allAtOnce', ends: 'flush' } } as const;
const SIGMA = 0.1 * RADIANS_PER_DEGREE;
/** Joint length of the 18 mm thick, eight-sided test piece, by hand: 18 / cos 22.5°. */
const JOINT_MM = 18 / Math.cos(Math.PI / 8);
/** Corner radius by hand: 50 / sin 22.5°. */
const CORNER_MM = 50 / Math.sin(Math.PI / 8);

const ringsOf = (method: MethodChanges, options: PlanOptions = {}, seed = 4) =>
  runBlock(methodPlan(projectWith({ method: { ...FLUSH, ...method } }), 0, options), seed, 0, RINGS);

describe.each(['touch', 'contact'] as Rule[])('a shared tilt error alone, by %s', (rule) => {
  const { showGapMm, hiddenGapMm } = ringsOf({ tilt: { sharedDeg: 0.1 } }, { rule });

  // derived: every joint opens by 2·L·δ outside when the tilt is short by δ, inside when it is over
  test('leaves half the rings tight outside and the other half inside, never both', () => {
    // 4.4 standard errors: 1 in 100,000 seeds
    const open = (gaps: Float64Array) => gaps.filter((gap) => gap > 1e-7).length;
    expect(Math.abs(countDeviation(open(showGapMm), RINGS, 0.5))).toBeLessThan(4.4);
    expect(open(showGapMm) + open(hiddenGapMm)).toBe(RINGS);
    showGapMm.forEach((gap, k) => {
      expect(Math.min(gap, hiddenGapMm[k]!)).toBeLessThan(1e-7);
    });
  });

  test('gives show gaps that are half a normal of standard deviation 2·L·σ', () => {
    const wide = 2 * JOINT_MM * SIGMA;
    const nearly = showGapMm.map((gap) => (gap > 1e-7 ? gap : 0));
    expect(positivePartDistance(nearly, (x) => 2 * normalCdf(x / wide) - 1)).toBeLessThan(1);
    expect(positivePartDistance(nearly, (x) => 2 * normalCdf(x / (1.1 * wide)) - 1)).toBeGreaterThan(1);
    const sorted = sortedCopy(showGapMm);
    for (const p of [0.6, 0.75, 0.9, 0.95, 0.99]) {
      const exact = wide * normalQuantile(p);
      // four standard errors √(p(1−p)/M)/f(q): 1 in 16,000 seeds each
      const density = Math.exp(-0.5 * (exact / wide) ** 2) / (wide * Math.sqrt(2 * Math.PI));
      const error = Math.sqrt((p * (1 - p)) / RINGS) / density;
      expect(Math.abs(quantile(sorted, p) - exact)).toBeLessThan(4 * error);
    }
  });
});

describe('the mouth', () => {
  const mouth = (method: MethodChanges, options: PlanOptions = {}) => ringsOf(method, options).mouthMm;
  const expectSd = (sample: Float64Array, sd: number) => {
    const found = new Moments().add(sample);
    // four standard errors of a normal's standard deviation and mean: 1 in 16,000 seeds each
    expect(Math.abs(found.sd - sd)).toBeLessThan((4 * sd) / Math.sqrt(2 * RINGS));
    expect(Math.abs(found.mean)).toBeLessThan((4 * sd) / Math.sqrt(RINGS));
    expect(Math.abs(found.sd - 1.1 * sd)).toBeGreaterThan((4 * sd) / Math.sqrt(2 * RINGS));
  };

  // derived: 2N faces each turn the rest of the ring, seen from the corner where it stays open
  test('of a shared tilt error spreads by 2N·σ times the corner radius', () => {
    expectSd(mouth({ tilt: { sharedDeg: 0.1 } }, { rule: 'touch' }), 2 * N * SIGMA * CORNER_MM);
  });

  test('of a uniform tilt of half-width w spreads by 2N·w/√3 times the corner radius, and no further than w', () => {
    const sample = mouth({ tilt: { sharedDeg: 0.1, shape: 'uniform' } }, { rule: 'touch' });
    const furthest = 2 * N * SIGMA * CORNER_MM;
    const { sd } = new Moments().add(sample);
    // SE(sd) = σ√((1.8 − 1)/(4M)) for a rectangular distribution
    expect(Math.abs(sd - furthest / Math.sqrt(3))).toBeLessThan(4 * sd * Math.sqrt(0.8 / (4 * RINGS)));
    expect(Math.max(...sample.map(Math.abs))).toBeLessThanOrEqual(furthest * (1 + 1e-9));
    expect(Math.max(...sample.map(Math.abs))).toBeGreaterThan(0.998 * furthest);
  });

  // derived: independent errors add their squares
  test('of errors from cut to cut spreads by the root of the summed squares, each cut at its own lever', () => {
    // Swapped, every face is cut by itself. Face of joint j turns the rest about its corner, R(1 − cos(2πj/N)) from the
    // mouth along the closing face's normal; two faces a joint.
    let squares = 0;
    for (let j = 0; j < N; j++) squares += 2 * (CORNER_MM * (1 - Math.cos((2 * Math.PI * j) / N))) ** 2;
    expectSd(mouth({ sequence: 'swapSides', tilt: { perCutDeg: 0.1 } }), SIGMA * Math.sqrt(squares));
  });

  test('of a perfect tilt is zero whatever the square of the guide, turned over or swapped', () => {
    for (const sequence of ['flipFace', 'swapSides'] as const) {
      expect(Math.max(...mouth({ sequence, guide: { zeroDeg: 0.2 } }).map(Math.abs))).toBeLessThan(1e-9);
    }
  });
});

describe('the angle a ring misses', () => {
  const angleSd = (method: MethodChanges): number => {
    const project = projectWith({ method });
    const plan = methodPlan(project, 0);
    const outputs = new Float64Array(RINGS * plan.matrix.width);
    plan.whole.open(5, 0, 'angle')(outputs, RINGS);
    const maps = ringMaps(ringGeometry(project.piece));
    const signed = Float64Array.from({ length: RINGS }, (_, k) => {
      const r = outputs.subarray(k * plan.matrix.width, k * plan.matrix.width + 6);
      // upright: bevels turn the ring about its axis alone
      expect(misclosureAngle(maps, r)).toBeCloseTo(Math.abs(r[2]!) / maps.scaleMm, 12);
      return r[2]! / maps.scaleMm / RADIANS_PER_DEGREE;
    });
    return new Moments().add(signed).sd;
  };
  const within = (found: number, sd: number) =>
    expect(Math.abs(found - sd)).toBeLessThan((4 * sd) / Math.sqrt(2 * RINGS));

  // derived: independent errors of 2N faces
  test('spreads by √(2N)·σ when every face is cut by itself', () => {
    within(angleSd({ sequence: 'swapSides', tilt: { perCutDeg: 0.1 } }), Math.sqrt(2 * N) * 0.1);
  });

  // derived: N − 1 cuts make two faces each, the first and the last one face each: √(4(N − 1) + 2)·σ
  test('spreads further when one cut makes two faces, and 2N-fold when all share the error', () => {
    within(angleSd({ sequence: 'flipFace', tilt: { perCutDeg: 0.1 } }), Math.sqrt(4 * (N - 1) + 2) * 0.1);
    within(angleSd({ sequence: 'flipFace', tilt: { sharedDeg: 0.1 } }), 2 * N * 0.1);
    within(angleSd({ sequence: 'swapSides', tilt: { sideDeg: 0.1 } }), Math.SQRT2 * N * 0.1);
  });
});

describe('gaps', () => {
  test('lose what pull-up squeezes shut, down to nothing', () => {
    const squeezed = { assembly: { ...FLUSH.assembly, pullUpMm: 0.03 } };
    const open = ringsOf({ tilt: { sharedDeg: 0.1 } });
    const shut = ringsOf({ tilt: { sharedDeg: 0.1 }, ...squeezed });
    open.showGapMm.forEach((gap, k) => {
      expect(shut.showGapMm[k]).toBeCloseTo(Math.max(0, gap - 0.03), 12);
    });
  });

  // derived: a hard joint of two bowed faces stands open by the size of the bows' sum; six joints are hard in two halves
  test('of bowed faces alone: the worst of six hard joints, each |N(0, √2·σ)|', () => {
    const bow = 2 / 40;
    const plan = methodPlan(
      projectWith({
        method: {
          sequence: 'swapSides',
          assembly: { by: 'twoHalves', truingMm: 0 },
          blade: { forceWithinCutN: 2, stiffnessNPerMm: 40 },
        },
      }),
      0,
    );
    const halves = runBlock(plan, 6, 0, RINGS).showGapMm;
    const worstOfSix = (x: number) => (2 * normalCdf(x / (Math.SQRT2 * bow)) - 1) ** 6;
    expect(positivePartDistance(halves, worstOfSix)).toBeLessThan(1);
    expect(positivePartDistance(halves, (x) => worstOfSix(x / 1.1))).toBeGreaterThan(1);
  });

  test('of bowed faces turned over: bows nest, so that only the joint between first and last cut is hollow', () => {
    const bow = 2 / 40;
    const plan = methodPlan(
      projectWith({ method: { assembly: { by: 'oneByOne' }, blade: { forceWithinCutN: 2, stiffnessNPerMm: 40 } } }),
      0,
    );
    const { showGapMm } = runBlock(plan, 6, 0, RINGS);
    // hollow: opens by the bow at the middle; proud: the joint rests on it and rocks, or stands open at both ends alike
    expect(positivePartDistance(showGapMm, (x) => 2 * normalCdf(x / (Math.SQRT2 * bow)) - 1)).toBeLessThan(1);
  });

  test('of two halves trued flat: the worst corner over the lowest one of two joints', () => {
    const trued = (truingMm: number) =>
      runBlock(methodPlan(projectWith({ method: { assembly: { by: 'twoHalves', truingMm } } }), 0), 7, 0, RINGS);
    const { showGapMm, closes } = trued(0.03);
    expect(closes.every((closed) => closed === 1)).toBe(true);
    // derived: P(max of the two outer corners − least of four ≤ x) integrated over the least corner, two joints
    const oneJoint = (x: number): number => {
      let sum = 0;
      const step = 0.002;
      for (let u = -6; u < 6; u += step) {
        const density = Math.exp(-0.5 * u * u) / Math.sqrt(2 * Math.PI);
        const above = 1 - normalCdf(u);
        const within = normalCdf(u + x / 0.03) - normalCdf(u);
        // the least is an outer corner (two ways) or an inner one (two ways)
        sum += density * step * (2 * within * above ** 2 + 2 * within ** 2 * above);
      }
      return sum;
    };
    const sorted = sortedCopy(showGapMm);
    for (const p of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      const share = oneJoint(quantile(sorted, p)) ** 2;
      expect(Math.abs(countDeviation(p * RINGS, RINGS, share))).toBeLessThan(4.4);
    }
    expect(Math.abs(spreadDifference(trued(0.033).showGapMm, showGapMm))).toBeGreaterThan(4.4);
  });
});
