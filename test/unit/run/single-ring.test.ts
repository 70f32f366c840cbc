import { describe, expect, test } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import { runMethod } from '../../../sim/run/run-method';
import { ringAtShare, singleRing } from '../../../sim/run/single-ring';

const TRIALS = 5000;

describe('one ring of a run', () => {
  test.each([0, 1, 2, 3])('is the very ring the run counted, whichever the method (%i) and the block', (method) => {
    const project = exampleProject();
    const { byRing } = finish(runMethod(project, method, { trials: TRIALS }));
    for (const ring of [0, 63, 64, 3999, 4000, TRIALS - 1]) {
      const { joints, mouthOuterMm, closes } = singleRing(project, method, ring, { trials: TRIALS });
      const worst = Math.max(...joints.map((joint) => joint.outerMm));
      expect(worst).toBe(byRing.showGapMm[ring]);
      expect(mouthOuterMm).toBe(byRing.mouthMm[ring]);
      expect(closes).toBe(byRing.closes[ring] === 1);
    }
  });

  test('a typical ring has half of all rings on either side, a bad one five in a hundred beyond it', () => {
    const gaps = Float64Array.from({ length: 1000 }, (_, k) => ((k * 7919) % 1000) / 1000);
    expect(gaps[ringAtShare(gaps, 0.5)]).toBeCloseTo(0.5, 10);
    expect(gaps[ringAtShare(gaps, 0.95)]).toBeCloseTo(0.95, 10);
    expect(gaps[ringAtShare(gaps, 1)]).toBeCloseTo(0.999, 10);
  });

  test('a ring the run does not have is refused with a sentence', () => {
    expect(() => singleRing(exampleProject(), 0, TRIALS, { trials: TRIALS })).toThrow(/not one of the 5000 rings/);
  });
});
