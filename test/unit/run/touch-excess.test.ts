/** The quick rule against the one that counts, ring by ring. */
import { describe, expect, test } from 'vitest';
import { touchExcess } from '../../../sim/run/touch-excess';
import { type MethodChanges, projectWith } from '../../support/projects';

const excessOf = (method: MethodChanges, slopeDeg = 0, trials = 400) =>
  touchExcess(projectWith({ method, piece: { slopeDeg, heightMm: 60 }, run: { seed: 11 } }), 0, trials);

describe('touch against contact', () => {
  // derived: all joints of an upright ring turn alike about their edges, and either rule opens them by that turn alone
  test.each(['flush', 'free'] as const)(
    'is the same for a bevel error that an upright ring shares; ends %s',
    (ends) => {
      const { excessMm, meanMm, p95Mm } = excessOf({ tilt: { sharedDeg: 0.2 }, assembly: { ends } })!;
      for (const excess of [...excessMm, meanMm, p95Mm]) expect(Math.abs(excess)).toBeLessThanOrEqual(1e-9);
    },
  );

  test.each([1, 30, 60, 90])('is never smaller for a bevel error that all faces share; slope %s°', (slopeDeg) => {
    const { excessMm } = excessOf({ tilt: { sharedDeg: 0.2 } }, slopeDeg)!;
    for (const excess of excessMm) expect(excess).toBeGreaterThanOrEqual(-1e-9);
  });

  test('is too large once the errors differ from cut to cut, by its mean and its outer rings', () => {
    const mixed = { tilt: { perCutDeg: 0.05 }, blade: { forceWithinCutN: 2, stiffnessNPerMm: 40 } };
    const { trials, excessMm, meanMm, p95Mm } = excessOf(mixed)!;
    expect(excessMm).toHaveLength(400);
    expect(trials).toBe(400);
    expect(meanMm).toBeGreaterThan(0.001);
    expect(p95Mm).toBeGreaterThan(meanMm);
    // by hand: the mean of all, and 20 of 400 beyond
    expect(meanMm).toBeCloseTo(excessMm.reduce((sum, excess) => sum + excess, 0) / 400, 12);
    expect(excessMm.filter((excess) => excess > p95Mm)).toHaveLength(20);
  });

  test('is closed by the same rings for the same seed', () => {
    expect(excessOf({ tilt: { perCutDeg: 0.1 } })).toEqual(excessOf({ tilt: { perCutDeg: 0.1 } }));
  });

  test('is nothing to ask where the rule does not decide', () => {
    expect(excessOf({ tilt: { sharedDeg: 0.2 }, assembly: { by: 'oneByOne' } })).toBeNull();
    expect(excessOf({ tilt: { sharedDeg: 0.2 }, assembly: { by: 'twoHalves' } })).toBeNull();
  });
});
