/** Marks that single cuts leave in the faces: how often, how deep, where, and which are seen and cut again. */
import { describe, expect, test } from 'vitest';
import { drawList, methodCuts } from '../../sim/errors/sources';
import { ringGeometry } from '../../sim/geometry/ring';
import type { Blade, Sequence } from '../../sim/project/document';
import { openRows } from '../../sim/run/joint-rows';
import type { Engine } from '../../sim/run/stages';
import { Moments } from '../../sim/statistics/moments';
import { countDeviation, positivePartDistance } from '../support/kolmogorov';
import { projectWith } from '../support/projects';

const N = 8;
const RINGS = 4000;
/** 1 in 100,000 seeds. */
const LIMIT = 4.42;

function marks(sequence: Sequence, blade: Partial<Blade>, engine: Engine = 'collapsed') {
  const project = projectWith({ method: { sequence, blade: { stiffnessNPerMm: 40, ...blade } } });
  const [method] = project.methods;
  const geometry = ringGeometry(project.piece);
  const cuts = methodCuts(project, method!, geometry);
  const pour = openRows(drawList(project, method!, geometry, cuts), engine, 12, 0, 'piece', RINGS);
  pour.pour(RINGS);
  return { rows: pour.rows, recuts: pour.recuts, cuts: cuts.length };
}

const rowOf = (rows: Float64Array, ring: number, row: 0 | 1 | 2, joint: number) =>
  rows[ring * 3 * N + row * N + joint]!;

describe('snags', () => {
  const snagged = { snagChance: 0.03, snagMeanN: 12 };

  test('come at their chance a cut, in any of the three rows, as deep as the force over the stiffness', () => {
    const { rows, cuts } = marks('swapSides', snagged);
    const depths: number[] = [];
    const byRow = [0, 0, 0];
    rows.forEach((depth, k) => {
      if (depth === 0) return;
      byRow[Math.floor((k % (3 * N)) / N)]!++;
      depths.push(depth);
    });
    // two faces can be marked in the same row of a joint; that is rare, 0.01² of all places
    const places = RINGS * cuts;
    expect(Math.abs(countDeviation(depths.length, places, 0.03 - 0.03 ** 2 / 6))).toBeLessThan(LIMIT);
    for (const count of byRow) expect(Math.abs(countDeviation(count, depths.length, 1 / 3))).toBeLessThan(LIMIT);
    expect(Math.min(...depths)).toBeGreaterThan(0);
    const single = Float64Array.from(depths);
    expect(positivePartDistance(single, (x) => 1 - Math.exp(-x / 0.3))).toBeLessThan(1);
    expect(positivePartDistance(single, (x) => 1 - Math.exp(-x / 0.36))).toBeGreaterThan(1);
  });

  test('turned over leave the print of a mark across its own hollow: at one end twice, in the middle nothing', () => {
    const { rows } = marks('flipFace', { ...snagged, snagChance: 0.002 });
    let doubled = 0;
    for (let ring = 0; ring < RINGS; ring++) {
      for (let joint = 0; joint < N - 1; joint++) {
        const [bottom, middle, top] = ([0, 1, 2] as const).map((row) => rowOf(rows, ring, row, joint));
        expect(bottom! + top!).toBeCloseTo(0, 12);
        expect(middle).toBeCloseTo(0, 12);
        if (bottom !== 0) doubled++;
      }
    }
    // seven cuts that make two faces, two rows of three
    expect(Math.abs(countDeviation(doubled, RINGS * 7, (0.002 * 2) / 3))).toBeLessThan(LIMIT);
  });

  test('seen to be too deep are cut again and leave nothing, as often as an exponential is that deep', () => {
    const { rows, recuts, cuts } = marks('swapSides', { ...snagged, recutAboveMm: 0.25 });
    expect(Math.max(...rows)).toBeLessThan(2 * 0.25);
    const recut = recuts.reduce((sum, count) => sum + count, 0);
    expect(Math.abs(countDeviation(recut, RINGS * cuts, 0.03 * Math.exp(-0.25 / 0.3)))).toBeLessThan(LIMIT);
    expect(marks('swapSides', snagged).recuts.every((count) => count === 0)).toBe(true);
  });
});

describe('bows', () => {
  test.each(['collapsed', 'plain'] as Engine[])(
    'swapped lie in every middle row, two faces a joint, %s engine',
    (engine) => {
      const { rows } = marks('swapSides', { forceWithinCutN: 2 }, engine);
      const middles = new Float64Array(RINGS * N);
      for (let ring = 0; ring < RINGS; ring++) {
        for (let joint = 0; joint < N; joint++) {
          middles[ring * N + joint] = rowOf(rows, ring, 1, joint);
          expect(rowOf(rows, ring, 0, joint)).toBe(0);
          expect(rowOf(rows, ring, 2, joint)).toBe(0);
        }
      }
      const { mean, sd } = new Moments().add(middles);
      const expected = Math.SQRT2 * 0.05;
      expect(Math.abs(sd - expected)).toBeLessThan((LIMIT * expected) / Math.sqrt(2 * middles.length));
      expect(Math.abs(mean)).toBeLessThan((LIMIT * expected) / Math.sqrt(middles.length));
    },
  );

  test.each(['collapsed', 'plain'] as Engine[])(
    'turned over nest, but where the strip begins and ends, %s engine',
    (engine) => {
      const { rows } = marks('flipFace', { forceWithinCutN: 2 }, engine);
      const closing = Float64Array.from({ length: RINGS }, (_, ring) => rowOf(rows, ring, 1, N - 1));
      for (let ring = 0; ring < RINGS; ring++) {
        for (let joint = 0; joint < N - 1; joint++) expect(Math.abs(rowOf(rows, ring, 1, joint))).toBeLessThan(1e-15);
      }
      const expected = Math.SQRT2 * 0.05;
      expect(Math.abs(new Moments().add(closing).sd - expected)).toBeLessThan(
        (LIMIT * expected) / Math.sqrt(2 * RINGS),
      );
    },
  );
});
