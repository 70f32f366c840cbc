/** The faces of a stave and the motions that carry them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leftFace, nominalPose, rightFace } from '../../../sim/geometry/faces';
import { cross, dot, type Frame, place, turn, type Vector } from '../../../sim/geometry/vectors';
import { leftFrame, PERFECT, rightFrame } from '../../support/exact-chain';
import { compose, inverse, motion, rotationVector } from '../../support/motions';
import { anyRing, geometryOf } from '../../support/rings';

const vector = (size: number): fc.Arbitrary<Vector> => {
  const number = fc.double({ min: -size, max: size, noNaN: true });
  return fc.tuple(number, number, number);
};

function expectNear(found: Vector, wanted: Vector, digits = 9): void {
  found.forEach((value, k) => {
    expect(value).toBeCloseTo(wanted[k]!, digits);
  });
}

describe('the right face of a stave', () => {
  test('of an upright eight-sided ring stands at half the width and leans back by 22.5°', () => {
    // by hand: edge straight up; from the outer edge inwards and to the middle; out of the wood to the right and in
    const { at, e, b, n } = rightFace(Math.PI / 8, 0, 100);
    const [cos, sin] = [Math.cos(Math.PI / 8), Math.sin(Math.PI / 8)];
    expectNear(at, [50, 0, 0]);
    expectNear(e, [0, 1, 0]);
    expectNear(b, [-sin, 0, -cos]);
    expectNear(n, [cos, 0, -sin]);
  });

  test('of a square flat frame is cut at 45° across the member: the narrow end is the shorter', () => {
    const { e, b, n } = rightFace(0, Math.PI / 4, 300);
    expectNear(e, [-Math.SQRT1_2, Math.SQRT1_2, 0]);
    expectNear(b, [0, 0, -1]);
    expectNear(n, [Math.SQRT1_2, Math.SQRT1_2, 0]);
  });

  test('has three directions at right angles, and the left face is its mirror image', () => {
    const angle = fc.double({ min: -1.2, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(angle, angle, (bevel, crosscut) => {
        const right = rightFace(bevel, crosscut, 80);
        const left = leftFace(bevel, crosscut, 80);
        expect(dot(right.e, right.b)).toBeCloseTo(0, 12);
        expectNear(cross(right.e, right.b), [-right.n[0], -right.n[1], -right.n[2]]);
        expectNear(cross(left.e, left.b), left.n);
        for (const key of ['at', 'e', 'b', 'n'] as const) {
          expectNear(left[key], [-right[key][0], right[key][1], right[key][2]]);
        }
      }),
      { seed: 81, numRuns: 200 },
    );
  });
});

describe('neighbours in a perfect ring', () => {
  test('share their joint: the left face of a stave lies on the right face of the one before', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const geometry = geometryOf(ring);
        const right = compose(nominalPose(geometry, 0), rightFrame(geometry, PERFECT));
        const left = compose(nominalPose(geometry, 1), leftFrame(geometry, PERFECT));
        expectNear(right.at, left.at, 8);
        right.axes.forEach((axis, k) => {
          expectNear(axis, left.axes[k]!, 10);
        });
      }),
      { seed: 82, numRuns: 200 },
    );
  });

  test('have their wide ends down and their outer faces out, by the slope', () => {
    const geometry = geometryOf({ sides: 6, slopeDeg: 15, midWidthMm: 120, heightMm: 200, thicknessMm: 16 });
    const pose = nominalPose(geometry, 0);
    const [low, high] = [place(pose, [0, -100, 0]), place(pose, [0, 100, 0])];
    expect(high[2] - low[2]).toBeCloseTo(200 * Math.cos(Math.PI / 12), 9);
    expect(low[0] - high[0]).toBeCloseTo(200 * Math.sin(Math.PI / 12), 9);
    expect(low[0]).toBeCloseTo(geometry.outsideFlatsMm / 2, 9);
  });
});

describe('motions', () => {
  const frame: fc.Arbitrary<Frame> = fc.tuple(vector(1.7), vector(100)).map(([angle, shift]) => motion(angle, shift));

  test('undo themselves, and compose one after the other', () => {
    fc.assert(
      fc.property(frame, frame, vector(50), (outer, inner, point) => {
        expectNear(place(compose(outer, inner), point), place(outer, place(inner, point)), 8);
        expectNear(place(inverse(outer), place(outer, point)), point, 8);
        expectNear(place(compose(outer, inverse(outer)), point), point, 8);
      }),
      { seed: 83, numRuns: 200 },
    );
  });

  test('give back the rotation they were made of, the smallest ones too', () => {
    fc.assert(
      fc.property(vector(1.7), fc.constantFrom(1, 1e-4, 1e-8, 1e-13, 0), (angle, size) => {
        const small: Vector = [angle[0] * size, angle[1] * size, angle[2] * size];
        const found = rotationVector(motion(small, [1, 2, 3]));
        found.forEach((value, k) => {
          expect(Math.abs(value - small[k]!)).toBeLessThan(1e-9 * size + 1e-15);
        });
      }),
      { seed: 84, numRuns: 200 },
    );
  });

  test('turn a quarter about the upright axis counter-clockwise', () => {
    const quarter = motion([0, 0, Math.PI / 2], [0, 0, 0]);
    expectNear(turn(quarter, [1, 0, 0]), [0, 1, 0]);
    expectNear(turn(quarter, [0, 1, 0]), [-1, 0, 0]);
  });
});
