/** What a test piece reads per degree, and which setting it corrects. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ringMaps } from '../../../sim/closure/ring-maps';
import { leftFace, nominalPose, rightFace } from '../../../sim/geometry/faces';
import { RADIANS_PER_DEGREE, type RingGeometry } from '../../../sim/geometry/ring';
import { add, dot, place, scale, turn } from '../../../sim/geometry/vectors';
import { DEFAULT_TEST } from '../../../sim/project/defaults';
import type { ShowFace, TestCuts } from '../../../sim/project/document';
import { readingRow, type TestSetting, testSetting } from '../../../sim/testing/test-reading';
import { misclosure, PERFECT, type StaveErrors } from '../../support/exact-chain';
import { compose, inverse } from '../../support/motions';
import { anyRing, faceErrors, geometryOf, type RingSizes, randomErrors, sameForAll } from '../../support/rings';

const eight: RingSizes = { sides: 8, slopeDeg: 0, midWidthMm: 100, heightMm: 120, thicknessMm: 18 };

const rowOf = (ring: RingSizes, test: Partial<TestCuts>, show: ShowFace = 'outside') =>
  readingRow(ringMaps(geometryOf(ring)), { ...DEFAULT_TEST, maxRounds: 1, ...test }, show);

function sensitivity(ring: RingSizes, test: Partial<TestCuts>, show: ShowFace = 'outside'): TestSetting {
  return testSetting(rowOf(ring, test, show)!);
}

/** By hand: corner radius of the outside. */
const cornerMm = (ring: RingSizes) => ring.midWidthMm / 2 / Math.sin(Math.PI / ring.sides);

describe('an upright test piece', () => {
  test.each([4, 6, 8, 12, 24])('of %i sides reads the shared tilt at the lever of its corners', (sides) => {
    const ring = { ...eight, sides };
    const deg = RADIANS_PER_DEGREE;
    // derived: 2N faces turn it about corners that stand 2R on average from the mouth; too little tilt reads open
    const full = sensitivity(ring, { kind: 'fullRing' });
    expect(full.setting).toBe('tilt');
    expect(full.mmPerDeg).toBeCloseTo(-2 * sides * cornerMm(ring) * deg, 9);
    // derived: half the faces; N·D·π/360 with D across the corners, not across the flats
    const acrossCorners = 2 * cornerMm(ring);
    const half = sensitivity(ring, { kind: 'halfRing' });
    expect(half.mmPerDeg).toBeCloseTo((-sides * acrossCorners * Math.PI) / 360, 9);
    // two halves together read as a whole ring: N·D·π/180
    const both = sensitivity(ring, { kind: 'twoHalvesTogether' });
    expect(both.mmPerDeg).toBeCloseTo((-sides * acrossCorners * Math.PI) / 180, 9);
    // two faces and an arm: 2·arm·π/180
    expect(sensitivity(ring, { kind: 'pair', armMm: 150 }).mmPerDeg).toBeCloseTo((-2 * 150 * Math.PI) / 180, 9);
  });

  test('of two staves reads along the stave where no arm is given', () => {
    expect(sensitivity(eight, { kind: 'pair' }).mmPerDeg).toBeCloseTo((-2 * 100 * Math.PI) / 180, 9);
  });

  test('reads less at the inside, whose corners are nearer', () => {
    const inner = sensitivity(eight, { kind: 'fullRing' }, 'inside').mmPerDeg;
    // derived: the outer corners' levers average to the inner corner's own radius
    const insideCornerMm = cornerMm(eight) - 18 / Math.cos(Math.PI / 8);
    expect(inner).toBeCloseTo(-2 * 8 * insideCornerMm * RADIANS_PER_DEGREE, 9);
    expect(sensitivity(eight, { kind: 'fullRing' }, 'both').mmPerDeg).toBe(
      sensitivity(eight, { kind: 'fullRing' }, 'outside').mmPerDeg,
    );
  });
});

describe('the setting corrected', () => {
  test('is the one that moves the reading more: the tilt of upright rings, the swing of flat ones', () => {
    for (const kind of ['fullRing', 'halfRing', 'twoHalvesTogether', 'pair'] as const) {
      expect(sensitivity({ ...eight, slopeDeg: 30, heightMm: 60 }, { kind }).setting).toBe('tilt');
      expect(sensitivity({ ...eight, slopeDeg: 70, heightMm: 60 }, { kind }).setting).toBe('swing');
      expect(sensitivity({ ...eight, slopeDeg: 90, heightMm: 60 }, { kind }).setting).toBe('swing');
    }
  });

  test('reads open when it is too small, whatever the ring and the test piece', () => {
    fc.assert(
      fc.property(anyRing, fc.constantFrom<TestCuts['kind']>('fullRing', 'halfRing', 'pair'), (ring, kind) => {
        const even = { ...ring, sides: ring.sides + (ring.sides % 2) };
        expect(sensitivity(even, { kind }).mmPerDeg).toBeLessThan(0);
      }),
      { seed: 51, numRuns: 200 },
    );
  });
});

describe('no test', () => {
  test('reads nothing: none chosen, or no rounds', () => {
    expect(rowOf(eight, { kind: 'none' })).toBeUndefined();
    expect(rowOf(eight, { kind: 'fullRing', maxRounds: 0 })).toBeUndefined();
  });
});

describe('against the exact chain', () => {
  const symmetricFrom = (numbers: Iterator<number>) => () => numbers.next().value as number;
  const linear = (row: Float64Array, errors: readonly StaveErrors[]): number =>
    faceErrors(errors).reduce((sum, error, k) => sum + row[k]! * error, 0);

  /** How far the closing joint's two outer edges stand apart along its normal when all other joints are mated. */
  function exactMouth(geometry: RingGeometry, errors: readonly StaveErrors[]): number {
    const right = rightFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
    const normal = turn(nominalPose(geometry, geometry.sides - 1), right.n);
    const at = place(nominalPose(geometry, geometry.sides - 1), right.at);
    const missed = misclosure(geometry, errors);
    return -dot(add(place(missed, at), scale(at, -1)), normal);
  }

  /** How far the far outer edge of the first half stands off the plane of its first end face. */
  function exactHalf(geometry: RingGeometry, errors: readonly StaveErrors[]): number {
    const face = (stave: StaveErrors, of: typeof leftFace, angle: 'Left' | 'Right') =>
      of(
        geometry.bevelRad + stave[`bevel${angle}`],
        geometry.crosscutRad + stave[`crosscut${angle}`],
        geometry.staveWidthMidMm + stave.width,
      );
    // The chain of the half alone, from the frame of its first stave.
    let pose = nominalPose(geometry, 0);
    const first = face(errors[0]!, leftFace, 'Left');
    const plane = { at: place(pose, first.at), normal: turn(pose, first.n) };
    for (let i = 0; i < geometry.sides / 2 - 1; i++) {
      const right = face(errors[i]!, rightFace, 'Right');
      const left = face(errors[i + 1]!, leftFace, 'Left');
      // Mated: edges meet, and the left face's normal, edge and depth lie along the right face's, looking the other way.
      const mated = compose(pose, { at: right.at, axes: [right.e, right.b, scale(right.n, -1)] });
      pose = compose(mated, inverse({ at: left.at, axes: [left.e, left.b, left.n] }));
    }
    const far = place(pose, face(errors[geometry.sides / 2 - 1]!, rightFace, 'Right').at);
    return -dot(add(far, scale(plane.at, -1)), plane.normal);
  }

  test.each([
    ['fullRing', exactMouth],
    ['halfRing', exactHalf],
  ] as const)('the reading of a %s holds for every error of every face, to first order', (kind, exact) => {
    fc.assert(
      fc.property(anyRing, fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })), (ring, numbers) => {
        const even = { ...ring, sides: ring.sides + (ring.sides % 2) };
        const geometry = geometryOf(even);
        const errors = randomErrors(even.sides, symmetricFrom(numbers), 1e-4, 1e-3);
        const row = rowOf(even, { kind })!;
        const reading = linear(row, errors);
        const perfect = exact(
          geometry,
          Array.from({ length: even.sides }, () => PERFECT),
        );
        const size = row.reduce((sum, v, k) => sum + Math.abs(v * faceErrors(errors)[k]!), 0);
        expect(Math.abs(perfect)).toBeLessThan(1e-9);
        expect(Math.abs(exact(geometry, errors) - reading)).toBeLessThan(1e-3 * size + 1e-9);
      }),
      { seed: 52, numRuns: 100 },
    );
  });

  test('a pair reads the sum of its two faces alone', () => {
    const row = rowOf(eight, { kind: 'pair', armMm: 100 })!;
    const used = [...row].flatMap((v, k) => (v === 0 ? [] : [k]));
    // bevel of the right face of stave 0 and of the left face of stave 1; an upright stave's crosscut turns nothing
    expect(used.filter((k) => Math.abs(row[k]!) > 1e-9)).toEqual([0, 6]);
    expect(linear(row, sameForAll(8, { bevelRightDeg: 0.1, bevelLeftDeg: -0.1 }))).toBeCloseTo(0, 12);
  });
});
