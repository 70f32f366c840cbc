/** The chain of staves itself, and the first-order maps against it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { misclosureOf, ringMaps } from '../../sim/closure/ring-maps';
import { leftFace, rightFace } from '../../sim/geometry/faces';
import { RADIANS_PER_DEGREE } from '../../sim/geometry/ring';
import { add, dot, type Frame, place, scale, turn } from '../../sim/geometry/vectors';
import { chainPoses, misclosure, misclosureAngle, PERFECT } from '../support/exact-chain';
import { giveOf, type JointMovement, sixNumbers } from '../support/exact-closure';
import { rotationVector } from '../support/motions';
import { anyRing, faceErrors, geometryOf, randomErrors, sameForAll, withOneError } from '../support/rings';

const perfect = (sides: number) => Array.from({ length: sides }, () => PERFECT);

function missedBy(frame: Frame): number {
  return Math.max(...rotationVector(frame).map(Math.abs), ...frame.at.map(Math.abs));
}

describe('a ring of perfect staves', () => {
  test('returns to its start for every number of sides and every slope', () => {
    let worst = 0;
    for (let sides = 3; sides <= 60; sides++) {
      for (let slopeDeg = 0; slopeDeg <= 90; slopeDeg += 2.5) {
        const geometry = geometryOf({ sides, slopeDeg, midWidthMm: 80, heightMm: 30, thicknessMm: 12 });
        worst = Math.max(worst, missedBy(misclosure(geometry, perfect(sides))));
      }
    }
    expect(worst).toBeLessThan(1e-9);
  });

  test('has its staves at equal turns around one axis', () => {
    const geometry = geometryOf({ sides: 7, slopeDeg: 33, midWidthMm: 80, heightMm: 30, thicknessMm: 12 });
    chainPoses(geometry, perfect(7)).forEach((pose, i) => {
      expect(Math.hypot(pose.at[0], pose.at[1])).toBeCloseTo(geometry.midInradiusMm, 9);
      expect(Math.cos((2 * Math.PI * i) / 7) * geometry.midInradiusMm).toBeCloseTo(pose.at[0], 9);
      expect(pose.at[2]).toBeCloseTo(0, 9);
    });
  });

  test('no longer does when the tilt is half a thousandth of a degree off, so the check can fail', () => {
    const geometry = geometryOf({ sides: 8, slopeDeg: 0, midWidthMm: 80, heightMm: 30, thicknessMm: 12 });
    expect(missedBy(misclosure(geometry, sameForAll(8, { bevelRightDeg: 0.0005 })))).toBeGreaterThan(1e-5);
  });
});

describe('the angle that a ring cut wrong misses', () => {
  // derived: 2N·φ′ − 360° with cos φ′ = cos T · cos G, worked out by an independent program
  test.each([
    ['four upright sides, tilt', 4, 0, 0.1, 0, 0.8],
    ['eight upright sides, tilt', 8, 0, 0.1, 0, 1.6],
    ['twelve upright sides, tilt', 12, 0, 0.1, 0, 2.4],
    ['four sides at 15°, tilt', 4, 15, 0.1, 0, 0.74818],
    ['a six-sided frame, swing', 6, 90, 0, 0.1, 1.2],
    ['four sides at 15°, swing', 4, 15, 0, 0.1, 0.20771],
  ])('is right for %s', (_, sides, slopeDeg, tiltDeg, swingDeg, missedDeg) => {
    const geometry = geometryOf({ sides, slopeDeg, midWidthMm: 100, heightMm: 20, thicknessMm: 10 });
    const errors = sameForAll(sides, {
      bevelRightDeg: tiltDeg,
      bevelLeftDeg: tiltDeg,
      crosscutRightDeg: swingDeg,
      crosscutLeftDeg: swingDeg,
    });
    // The chain turns by N times the turn of one joint; what it misses is counted about the tilted axis it turns on.
    const oneTurn = rotationVector(chainStep(geometry, errors));
    const turnDeg = (sides * Math.hypot(...oneTurn)) / RADIANS_PER_DEGREE;
    expect(Math.abs(turnDeg - 360)).toBeCloseTo(missedDeg, 4);
    const linear = misclosureAngle(ringMaps(geometry), misclosureOf(ringMaps(geometry), faceErrors(errors)));
    expect(linear / RADIANS_PER_DEGREE).toBeCloseTo(missedDeg, 2);
  });

  /** From one stave to the next. */
  function chainStep(geometry: ReturnType<typeof geometryOf>, errors: ReturnType<typeof sameForAll>): Frame {
    const [first, second] = chainPoses(geometry, errors);
    const axes = second!.axes.map((axis) => [
      dot(axis, first!.axes[0]),
      dot(axis, first!.axes[1]),
      dot(axis, first!.axes[2]),
    ]) as unknown as Frame['axes'];
    return { at: [0, 0, 0], axes };
  }
});

describe('the first-order maps', () => {
  test('are the derivatives of the exact chain by every error of every stave', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const geometry = geometryOf(ring);
        const maps = ringMaps(geometry);
        // every error of three staves: the first, one in between, the last
        for (const stave of new Set([0, ring.sides >> 1, ring.sides - 1])) {
          for (let k = 0; k < 5; k++) {
            const error = stave * 5 + k;
            const by = k === 4 ? 1e-3 : 1e-5;
            const plus = sixNumbers(maps, misclosure(geometry, withOneError(ring.sides, error, by)));
            const minus = sixNumbers(maps, misclosure(geometry, withOneError(ring.sides, error, -by)));
            const column = maps.errorColumns.subarray(error * 6, error * 6 + 6);
            const size = Math.max(...column.map(Math.abs));
            for (let i = 0; i < 6; i++) {
              const derivative = (plus[i]! - minus[i]!) / (2 * by);
              expect(Math.abs(derivative - column[i]!), `error ${error}, number ${i}`).toBeLessThan(1e-6 * size + 1e-6);
            }
          }
        }
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  test('are the derivatives of the exact chain by every movement of every joint', () => {
    fc.assert(
      fc.property(anyRing, fc.nat(), (ring, pick) => {
        const geometry = geometryOf(ring);
        const maps = ringMaps(geometry);
        const staves = perfect(ring.sides);
        const joint = pick % ring.sides;
        const columns = [
          ...[0, 1, 2].map((k) => maps.openingColumns.subarray(joint * 18 + 6 * k, joint * 18 + 6 * k + 6)),
          ...[0, 1, 2].map((k) => maps.slideColumns.subarray(joint * 18 + 6 * k, joint * 18 + 6 * k + 6)),
        ];
        columns.forEach((column, k) => {
          const by = k === 3 ? 1e-5 : 1e-3;
          const moved = (size: number): Float64Array => {
            const movement = [0, 0, 0, 0, 0, 0].map((_, i) => (i === k ? size : 0)) as unknown as JointMovement;
            const give = (j: number) => giveOf(maps, j === joint ? movement : [0, 0, 0, 0, 0, 0]);
            return sixNumbers(maps, misclosure(geometry, staves, give));
          };
          const [plus, minus] = [moved(by), moved(-by)];
          const size = Math.max(...column.map(Math.abs));
          for (let i = 0; i < 6; i++) {
            expect(Math.abs((plus[i]! - minus[i]!) / (2 * by) - column[i]!)).toBeLessThan(1e-6 * size + 1e-6);
          }
        });
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  test('leave out only what grows with the square of the errors', () => {
    fc.assert(
      fc.property(anyRing, fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })), (ring, numbers) => {
        const geometry = geometryOf(ring);
        const maps = ringMaps(geometry);
        const symmetric = () => numbers.next().value as number;
        const errors = randomErrors(ring.sides, symmetric, 1, 1);
        const missed = (share: number): number => {
          const scaled = errors.map((stave) => ({
            bevelRight: share * stave.bevelRight,
            bevelLeft: share * stave.bevelLeft,
            crosscutRight: share * stave.crosscutRight,
            crosscutLeft: share * stave.crosscutLeft,
            width: share * stave.width,
          }));
          const exact = sixNumbers(maps, misclosure(geometry, scaled));
          const linear = misclosureOf(maps, faceErrors(scaled));
          return Math.hypot(...exact.map((v, i) => v - linear[i]!));
        };
        const [whole, quarter] = [missed(0.04), missed(0.01)];
        // a quarter of the errors leaves a sixteenth of the rest; a first-order slip would leave a quarter
        expect(quarter).toBeLessThan(whole / 10 + 1e-9);
      }),
      { seed: 7, numRuns: 150 },
    );
  });
});

describe('the opening of a joint', () => {
  test('is a + σ·b + ρ·c at each of its four corners, measured between the two faces', () => {
    fc.assert(
      fc.property(
        anyRing,
        fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -1, max: 1, noNaN: true }))),
        (ring, abc) => {
          const geometry = geometryOf(ring);
          const maps = ringMaps(geometry);
          const [a, b, c] = abc.map((v) => v * 1e-4) as [number, number, number];
          const poses = chainPoses(geometry, perfect(ring.sides), () => giveOf(maps, [a, b, c, 0, 0, 0]));
          const right = rightFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
          const left = leftFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
          const normal = turn(poses[0]!, right.n);
          for (const row of [-1, 0, 1]) {
            for (const side of [1, -1]) {
              const corner = (face: typeof right) =>
                add(
                  add(face.at, scale(face.e, (row * geometry.edgeLengthMm) / 2)),
                  scale(face.b, side === 1 ? 0 : geometry.jointLengthMm),
                );
              const apart = add(place(poses[1]!, corner(left)), scale(place(poses[0]!, corner(right)), -1));
              expect(dot(apart, normal)).toBeCloseTo(a + side * b + row * c, 9);
            }
          }
        },
      ),
      { seed: 8, numRuns: 100 },
    );
  });
});
