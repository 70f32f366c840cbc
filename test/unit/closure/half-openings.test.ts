/** Clear half-openings against the exact chain, and out of round by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { halfOpeningColumns, outOfRound, removeFirstHarmonic } from '../../../sim/closure/half-openings';
import { jointGive, lastJoints } from '../../../sim/closure/joint-give';
import { misclosureOf, ringMaps } from '../../../sim/closure/ring-maps';
import { place } from '../../../sim/geometry/vectors';
import type { Ends } from '../../../sim/project/document';
import { chainPoses } from '../../support/exact-chain';
import { giveOf, type JointMovement, STILL } from '../../support/exact-closure';
import { anyRing, faceErrors, geometryOf, type RingSizes, randomErrors } from '../../support/rings';
import { slidesFor } from '../../support/slides-for';

/** Distances of points from the centre that fits them best when they ought to lie on a circle: Gauss–Newton. */
function fromBestCentre(points: readonly (readonly [number, number])[]): number[] {
  let [cx, cy] = [0, 0];
  for (let round = 0; round < 20; round++) {
    const reach = points.map(([x, y]) => Math.hypot(x - cx, y - cy));
    const mean = reach.reduce((sum, d) => sum + d, 0) / points.length;
    let [dx, dy] = [0, 0];
    points.forEach(([x, y], i) => {
      dx += (2 / points.length) * (reach[i]! - mean) * ((x - cx) / reach[i]!);
      dy += (2 / points.length) * (reach[i]! - mean) * ((y - cy) / reach[i]!);
    });
    cx += dx;
    cy += dy;
  }
  return points.map(([x, y]) => Math.hypot(x - cx, y - cy));
}

/** Half-openings of the ring with these errors, pulled up by the least-cost movements, from the exact chain. */
function exactHalves(
  ring: RingSizes,
  freeJoints: number,
  ends: Ends,
  errors: ReturnType<typeof randomErrors>,
): number[] {
  const geometry = geometryOf(ring);
  const maps = ringMaps(geometry);
  const give = jointGive(maps, lastJoints(ring.sides, freeJoints), ends);
  const r = misclosureOf(maps, faceErrors(errors));
  const times = (rows: Float64Array, row: number): number => {
    let sum = 0;
    for (let k = 0; k < 6; k++) sum += rows[row * 6 + k]! * r[k]!;
    return sum;
  };
  const lambda = Float64Array.from({ length: 6 }, (_, i) => times(give.linearInverse, i));
  const movements: JointMovement[] = Array.from({ length: ring.sides }, () => STILL);
  give.free.forEach((joint, f) => {
    const opened = [times(give.linear, 3 * f), times(give.linear, 3 * f + 1), times(give.linear, 3 * f + 2)] as const;
    movements[joint] = [...opened, ...slidesFor(give, joint, lambda)];
  });
  const poses = chainPoses(geometry, errors, (joint) => giveOf(maps, movements[joint]!));
  const points = poses.slice(0, -1).map((pose) => {
    const [x, y] = place(pose, [0, geometry.heightMm / 2, -geometry.thicknessMm]);
    return [x, y] as const;
  });
  return fromBestCentre(points);
}

describe('clear half-openings', () => {
  test('follow the exact chain, pulled up, to first order in every error', () => {
    fc.assert(
      fc.property(
        anyRing,
        fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
        fc.constantFrom<Ends>('free', 'flush'),
        fc.boolean(),
        (ring, numbers, ends, allFree) => {
          const freeJoints = allFree ? ring.sides : 3;
          const maps = ringMaps(geometryOf(ring));
          const columns = halfOpeningColumns(maps, jointGive(maps, lastJoints(ring.sides, freeJoints), ends));
          const errors = randomErrors(ring.sides, () => numbers.next().value as number, 1e-4, 1e-3);
          const nominal = geometryOf(ring).clearOpeningNarrowMm / 2;
          const inputs = faceErrors(errors);
          const exact = exactHalves(ring, freeJoints, ends, errors);
          let size = 1e-6;
          for (let i = 0; i < ring.sides; i++) size = Math.max(size, Math.abs(exact[i]! - nominal));
          for (let i = 0; i < ring.sides; i++) {
            let linear = nominal;
            for (let e = 0; e < inputs.length; e++) linear += columns[e * ring.sides + i]! * inputs[e]!;
            expect(Math.abs(linear - exact[i]!)).toBeLessThan(0.01 * size);
          }
        },
      ),
      { seed: 21, numRuns: 120 },
    );
  });

  test('of an upright ring grow by half the gain in flats when every stave is wider', () => {
    const ring: RingSizes = { sides: 8, slopeDeg: 0, midWidthMm: 100, heightMm: 120, thicknessMm: 18 };
    const maps = ringMaps(geometryOf(ring));
    const columns = halfOpeningColumns(maps, jointGive(maps, lastJoints(8, 8), 'flush'));
    for (let i = 0; i < 8; i++) {
      let grown = 0;
      for (let stave = 0; stave < 8; stave++) grown += columns[(stave * 5 + 4) * 8 + i]!;
      // by hand: R = W / (2 tan 22.5°)
      expect(grown).toBeCloseTo(1 / (2 * Math.tan(Math.PI / 8)), 9);
    }
  });
});

describe('taking out where the axis is', () => {
  test('removes a shift of the whole ring and leaves everything else', () => {
    const shifted = Float64Array.from({ length: 7 }, (_, i) => 50 + 0.3 * Math.cos((2 * Math.PI * i) / 7 - 1.1));
    removeFirstHarmonic(shifted);
    for (const value of shifted) expect(value).toBeCloseTo(50, 12);
    const oval = Float64Array.from({ length: 8 }, (_, i) => Math.cos((4 * Math.PI * i) / 8));
    const same = Float64Array.from(oval);
    removeFirstHarmonic(oval);
    oval.forEach((value, i) => {
      expect(value).toBeCloseTo(same[i]!, 12);
    });
  });
});

describe('out of round', () => {
  test('is the largest less the smallest width across the flats', () => {
    // flats: 1 + 3 = 4 and 2 + 5 = 7, twice each
    expect(outOfRound(Float64Array.of(1, 2, 3, 5), 4)).toBe(3);
    expect(outOfRound(Float64Array.of(7, 7, 7, 7, 7, 7), 6)).toBe(0);
  });

  test('of an odd ring measures from a flat to the middle of the two opposite', () => {
    // 1 + (2 + 4)/2 = 4, 2 + (4 + 1)/2 = 4.5, 4 + (1 + 2)/2 = 5.5
    expect(outOfRound(Float64Array.of(1, 2, 4), 3)).toBe(1.5);
    // opposite the first of five are the third and the fourth: 1, 0.5, 1, 1, 0.5
    expect(outOfRound(Float64Array.of(0, 0, 1, 1, 0), 5)).toBe(0.5);
  });
});
