/** What becomes of a ring whose errors are known: gaps, sizes, and its grade. */
import { describe, expect, test } from 'vitest';
import type { Limits, ShowFace } from '../../../sim/project/document';
import { runBlock } from '../../../sim/run/block';
import type { BlockResult } from '../../../sim/run/block-result';
import { GOOD, REWORK, SCRAP } from '../../../sim/run/grade';
import { methodPlan } from '../../../sim/run/plan';
import { type MethodChanges, type ProjectChanges, projectWith } from '../../support/projects';

/** One ring with nothing left to chance, ends flush. */
function ring(method: MethodChanges, changes: ProjectChanges = {}): BlockResult {
  const assembly = { ends: 'flush', ...method.assembly } as const;
  return runBlock(methodPlan(projectWith({ ...changes, method: { ...method, assembly } }), 0), 1, 0, 1);
}

/** Eight staves of 100 mm, 18 mm thick: every joint opens by 0.680 mm for each degree that the tilt is short. */
const short = (deg: number): MethodChanges => ({ tilt: { biasDeg: -deg } });
/** By hand: 2·L·δ, L = 18 / cos 22.5°. */
const opening = (deg: number): number => 2 * (18 / Math.cos(Math.PI / 8)) * ((deg * Math.PI) / 180);

describe('the gaps', () => {
  test.each([
    ['outside', opening(0.1), 0],
    ['inside', 0, opening(0.1)],
    ['both', opening(0.1), 0],
  ] as [ShowFace, number, number][])(
    'of a tilt too small open outside: with the %s showing',
    (showFace, show, hidden) => {
      const { showGapMm, hiddenGapMm, mouthMm } = ring(short(0.1), { piece: { showFace } });
      expect(showGapMm[0]).toBeCloseTo(show, 9);
      expect(hiddenGapMm[0]).toBeCloseTo(hidden, 9);
      expect(mouthMm[0]).toBeGreaterThan(0);
    },
  );

  test.each([
    ['outside', 0, opening(0.1)],
    ['inside', opening(0.1), 0],
    ['both', opening(0.1), 0],
  ] as [ShowFace, number, number][])(
    'of a tilt too large open inside: with the %s showing',
    (showFace, show, hidden) => {
      const { showGapMm, hiddenGapMm, mouthMm } = ring(short(-0.1), { piece: { showFace } });
      expect(showGapMm[0]).toBeCloseTo(show, 9);
      expect(hiddenGapMm[0]).toBeCloseTo(hidden, 9);
      expect(mouthMm[0]).toBeLessThan(0);
    },
  );

  test('of every joint are told one by one', () => {
    const project = projectWith({ method: { ...short(0.1), assembly: { ends: 'flush' } } });
    const { jointGapsMm, jointGapCounts } = runBlock(methodPlan(project, 0), 1, 0, 10);
    expect([...jointGapCounts]).toEqual(Array(8).fill(10));
    for (const gap of jointGapsMm) expect(gap).toBeCloseTo(opening(0.1), 9);
  });
});

describe('the grade', () => {
  const LIMITS: Limits = { showGapMm: 0.15, hiddenGapMm: 0.3, remedyGapMm: 0.5 };
  const gradeOf = (deg: number, limits: Partial<Limits> = {}) =>
    ring(short(deg), { limits: { ...LIMITS, ...limits } }).grade[0];
  const degFor = (gapMm: number) => gapMm / opening(1);

  test('goes by the show gap: good up to its limit, to be put right up to the remedy’s, else scrap', () => {
    expect([0.149, 0.151, 0.499, 0.501].map((gap) => gradeOf(degFor(gap)))).toEqual([GOOD, REWORK, REWORK, SCRAP]);
  });

  test('goes by the hidden gap just so, with its own limit', () => {
    expect([0.299, 0.301, 0.499, 0.501].map((gap) => gradeOf(-degFor(gap)))).toEqual([GOOD, REWORK, REWORK, SCRAP]);
  });

  test('never scraps a gap within its own limit, however little can be put right', () => {
    expect(gradeOf(degFor(0.14), { remedyGapMm: 0.05 })).toBe(GOOD);
    expect(gradeOf(degFor(0.16), { remedyGapMm: 0.05 })).toBe(SCRAP);
    expect(gradeOf(-degFor(0.29), { remedyGapMm: 0.05 })).toBe(GOOD);
  });

  test('scraps a ring that does not close, whatever the limits', () => {
    const wide = { showGapMm: 10, hiddenGapMm: 10, remedyGapMm: 10 };
    expect([gradeOf(degFor(1.99), wide), gradeOf(degFor(2.01), wide)]).toEqual([GOOD, SCRAP]);
    const squeezed = ring({ ...short(degFor(2.01)), assembly: { pullUpMm: 1 } }, { limits: wide });
    // judged before pull-up; its gaps count as over 2 mm all the same
    expect([squeezed.closes[0], squeezed.grade[0]]).toEqual([0, SCRAP]);
    expect(squeezed.showGapMm[0]).toBeGreaterThan(2);
    expect(squeezed.hiddenGapMm[0]).toBeGreaterThan(2);
    for (const gap of squeezed.jointGapsMm) expect(gap).toBeGreaterThan(2);
  });

  test('knows a ring whose only fault is its show gap', () => {
    const { otherwiseGood, grade } = ring(short(degFor(0.3)), { limits: LIMITS });
    expect([otherwiseGood[0], grade[0]]).toEqual([1, REWORK]);
    expect(ring(short(-degFor(0.4)), { limits: LIMITS }).otherwiseGood[0]).toBe(0);
  });
});

describe('the insert', () => {
  // by hand: clear opening of eight staves of 100 mm, 18 mm thick: 100 / tan 22.5° − 36 = 205.421 mm
  const CLEAR_MM = 100 / Math.tan(Math.PI / 8) - 36;
  const fits = (diameterMm: number, clearanceMm: number, method: MethodChanges = {}) => {
    const { insertFits, grade } = ring(method, { piece: { insert: { diameterMm, clearanceMm } } });
    expect(grade[0]).toBe(insertFits[0] === 1 ? GOOD : SCRAP);
    return insertFits[0] === 1;
  };

  test('fits as long as its diameter and its clearance do', () => {
    expect(fits(CLEAR_MM - 3.001, 3)).toBe(true);
    expect(fits(CLEAR_MM - 2.999, 3)).toBe(false);
    expect(ring({}).clearOpeningMm[0]).toBeCloseTo(CLEAR_MM, 9);
  });

  test('loses what all staves are too narrow', () => {
    // a stop that drifts: 0.1, 0.2 … 0.8 mm shorter; flats shrink by the mean, the smallest by a little more
    const drift: MethodChanges = { width: { by: 'fixedStop', driftMeanMm: -0.1 } };
    const { clearOpeningMm, outOfRoundMm } = ring(drift);
    const meanLoss = 0.45 / Math.tan(Math.PI / 8);
    expect(clearOpeningMm[0]).toBeLessThan(CLEAR_MM - meanLoss);
    expect(clearOpeningMm[0]).toBeGreaterThan(CLEAR_MM - 2 * meanLoss);
    expect(outOfRoundMm[0]).toBeGreaterThan(0);
    expect(fits(CLEAR_MM - meanLoss - 0.001, 0, drift)).toBe(false);
  });

  test('always fits where there is none', () => {
    expect(ring({ width: { by: 'fixedStop', driftMeanMm: -1 } }).insertFits[0]).toBe(1);
  });
});

describe('two halves', () => {
  test('report the wood that truing removes: half of what the end faces are out of line, at the deepest corner', () => {
    const { truingMm, showGapMm } = ring({ ...short(0.1), assembly: { by: 'twoHalves' } });
    // by hand: eight faces of four staves turn the two end faces by 0.8° about the edge; half of it over L = 19.483 mm
    const joint = 18 / Math.cos(Math.PI / 8);
    expect(truingMm[0]).toBeCloseTo((joint * 0.8 * Math.PI) / 180 / 2, 9);
    expect(showGapMm[0]).toBe(0);
    expect(ring(short(0.1)).truingMm).toHaveLength(0);
  });
});
