import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rightFace } from '../../../sim/geometry/faces';
import { RADIANS_PER_DEGREE, type RingGeometry, ringGeometry } from '../../../sim/geometry/ring';
import { add, cross, scale, type Vector } from '../../../sim/geometry/vectors';
import { type StaveShrinkage, seasonChange, staveShrinkage } from '../../../sim/season/bevel-change';
import type { Movement } from '../../../sim/season/woods';
import { misclosure } from '../../support/exact-chain';
import { rotationVector } from '../../support/motions';
import { anyRing, geometryOf, pieceOf, type RingSizes, sameForAll } from '../../support/rings';

const SOLID: Movement = { kind: 'solid', radialPerPoint: 0.002, tangentialPerPoint: 0.004 };
const SHEET: Movement = { kind: 'sheet', inPlanePerPoint: 0.0002, throughPerPoint: 0.0025 };

const part = fc.double({ min: -0.03, max: 0.03, noNaN: true });
const anyShrinkage: fc.Arbitrary<StaveShrinkage> = fc.record({
  alongRing: part,
  upFace: part,
  throughThickness: part,
});

const shrunk = ([x, y, z]: Vector, shrinkage: StaveShrinkage): Vector => [
  x * (1 - shrinkage.alongRing),
  y * (1 - shrinkage.upFace),
  z * (1 - shrinkage.throughThickness),
];

/** Tilt and swing of the right face after its points have moved, from the points alone. */
function measuredAngles(geometry: RingGeometry, shrinkage: StaveShrinkage): { bevelDeg: number; crosscutDeg: number } {
  const face = rightFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
  const up = add(shrunk(add(face.at, scale(face.e, 50)), shrinkage), scale(shrunk(face.at, shrinkage), -1));
  const inward = add(shrunk(add(face.at, scale(face.b, 20)), shrinkage), scale(shrunk(face.at, shrinkage), -1));
  const normal = cross(up, inward);
  return {
    // Square to the show face there would be no part along z; the swing shows on the show face.
    bevelDeg: Math.asin(Math.abs(normal[2]) / Math.hypot(...normal)) / RADIANS_PER_DEGREE,
    crosscutDeg: Math.atan2(-up[0], up[1]) / RADIANS_PER_DEGREE,
  };
}

describe('settings after a change of moisture', () => {
  test('are those of a stave whose every point has moved', () => {
    fc.assert(
      fc.property(anyRing, anyShrinkage, (ring, shrinkage) => {
        const geometry = geometryOf(ring);
        const change = seasonChange(geometry, shrinkage);
        const measured = measuredAngles(geometry, shrinkage);
        expect(change.bevelAfterDeg).toBeCloseTo(measured.bevelDeg, 9);
        expect(change.crosscutAfterDeg).toBeCloseTo(measured.crosscutDeg, 9);
      }),
    );
  });

  test('turn a chain of tight joints by the sum that is told', () => {
    fc.assert(
      fc.property(anyRing, anyShrinkage, (ring, shrinkage) => {
        const geometry = geometryOf(ring);
        const change = seasonChange(geometry, shrinkage);
        const errors = sameForAll(ring.sides, {
          bevelRightDeg: change.bevelAfterDeg - change.bevelDeg,
          bevelLeftDeg: change.bevelAfterDeg - change.bevelDeg,
          crosscutRightDeg: change.crosscutAfterDeg - change.crosscutDeg,
          crosscutLeftDeg: change.crosscutAfterDeg - change.crosscutDeg,
        });
        const turned = Math.hypot(...rotationVector(misclosure(geometry, errors))) / RADIANS_PER_DEGREE;
        expect(Math.abs(change.ringSumDeg)).toBeCloseTo(turned, 6);
      }),
    );
  });

  test('do not change with nothing, nor when all directions shrink alike', () => {
    for (const slopeDeg of [0, 30, 90]) {
      const geometry = geometryOf({ sides: 8, slopeDeg, midWidthMm: 100, heightMm: 60, thicknessMm: 18 });
      const still = seasonChange(geometry, staveShrinkage(SOLID, 'upStave', 'flatsawn', 0));
      expect(still.clearOpeningGainMm).toBeCloseTo(0, 12);
      const alike = seasonChange(geometry, { alongRing: 0.02, upFace: 0.02, throughThickness: 0.02 });
      for (const change of [still, alike]) {
        expect(change.bevelAfterDeg).toBeCloseTo(geometry.bevelDeg, 12);
        expect(change.crosscutAfterDeg).toBeCloseTo(geometry.crosscutDeg, 12);
        expect(change.ringSumDeg).toBeCloseTo(0, 10);
        expect(change.jointOpeningMm).toBeCloseTo(0, 9);
      }
    }
  });
});

describe('shrinkage of a stave', () => {
  test('follows grain and sawing', () => {
    expect(staveShrinkage(SOLID, 'upStave', 'flatsawn', -5)).toEqual({
      alongRing: 0.02,
      upFace: 0,
      throughThickness: 0.01,
    });
    expect(staveShrinkage(SOLID, 'upStave', 'quartersawn', -5)).toEqual({
      alongRing: 0.01,
      upFace: 0,
      throughThickness: 0.02,
    });
    expect(staveShrinkage(SOLID, 'alongRing', 'flatsawn', 5)).toEqual({
      alongRing: 0,
      upFace: -0.02,
      throughThickness: -0.01,
    });
  });

  test('of a sheet follows neither', () => {
    const shrinkage = { alongRing: 0.001, upFace: 0.001, throughThickness: 0.0125 };
    for (const grain of ['alongRing', 'upStave'] as const) {
      for (const sawing of ['flatsawn', 'quartersawn'] as const) {
        expect(staveShrinkage(SHEET, grain, sawing, -5)).toEqual(shrinkage);
      }
    }
  });

  test('is refused beyond fibre saturation', () => {
    expect(() => staveShrinkage(SOLID, 'upStave', 'flatsawn', 31)).toThrow(
      'Change of moisture 31 points is not between −30 and 30.',
    );
  });
});

describe('gaps', () => {
  const upright: RingSizes = { sides: 8, slopeDeg: 0, midWidthMm: 100, heightMm: 120, thicknessMm: 18 };

  test('of an upright ring are 2·L·(B′ − B), outside when dry staves were ripped flatsawn', () => {
    const geometry = geometryOf(upright);
    const dry = seasonChange(geometry, staveShrinkage(SOLID, 'upStave', 'flatsawn', -4));
    const gap = 2 * geometry.jointLengthMm * (dry.bevelDeg - dry.bevelAfterDeg) * RADIANS_PER_DEGREE;
    expect(gap).toBeGreaterThan(0.05);
    expect(dry.jointOpeningMm).toBeCloseTo(gap, 9);
    expect(dry.outsideGapMm).toBeCloseTo(gap, 9);
    expect(dry.insideGapMm).toBeCloseTo(0, 9);

    const damp = seasonChange(geometry, staveShrinkage(SOLID, 'upStave', 'flatsawn', 4));
    expect(damp.jointOpeningMm).toBeLessThan(-0.05);
    expect(damp.outsideGapMm).toBeCloseTo(0, 9);
  });

  test('of a flat frame are 2·H·(M′ − M) through the whole thickness', () => {
    const geometry = geometryOf({ sides: 6, slopeDeg: 90, midWidthMm: 300, heightMm: 80, thicknessMm: 20 });
    const dry = seasonChange(geometry, staveShrinkage(SOLID, 'alongRing', 'quartersawn', -4));
    const gap = 2 * geometry.edgeLengthMm * (dry.crosscutAfterDeg - dry.crosscutDeg) * RADIANS_PER_DEGREE;
    expect(gap).toBeGreaterThan(0.2);
    expect(dry.jointOpeningMm).toBeCloseTo(-gap, 9);
    expect(dry.outsideGapMm).toBeCloseTo(gap, 9);
    expect(dry.insideGapMm).toBeCloseTo(gap, 9);
  });

  test('of a sheet: a frame keeps its mitres, an upright ring opens inside as the sheet gets thinner', () => {
    const shrinkage = staveShrinkage(SHEET, 'alongRing', 'flatsawn', -4);
    const frame = geometryOf({ sides: 4, slopeDeg: 90, midWidthMm: 300, heightMm: 75, thicknessMm: 18 });
    expect(seasonChange(frame, shrinkage).jointOpeningMm).toBeCloseTo(0, 9);
    expect(seasonChange(geometryOf(upright), shrinkage).jointOpeningMm).toBeLessThan(-0.01);
  });

  /**
   * A joint gives by b about its edge and by c across it. Together they make up the joint's part α of the ring's sum about
   * the axis, p·b + q·c = α, and of all such pairs (b + c)² + b² + c² is least: the contact rule for equal joints, by hand.
   */
  test.each([
    [10, 'b'],
    [45, 'both'],
    [65, 'both'],
    [85, 'c'],
  ] as const)('of a ring splayed by %i° are the least that make up the sum', (slopeDeg, gives) => {
    const geometry = geometryOf({ sides: 8, slopeDeg, midWidthMm: 100, heightMm: 50, thicknessMm: 25 });
    const change = seasonChange(geometry, staveShrinkage(SOLID, 'alongRing', 'quartersawn', -4));
    const { bevelRad: B, crosscutRad: M, slopeRad: s } = geometry;
    // The axis against the edge, and against the line through the thickness.
    const p = (2 * Math.cos(M) * Math.cos(s)) / geometry.jointLengthMm;
    const q = (2 * (Math.sin(B) * Math.sin(M) * Math.cos(s) + Math.cos(B) * Math.sin(s))) / geometry.edgeLengthMm;
    const ways = {
      b: { b: 1 / p, c: 0 },
      c: { b: 0, c: 1 / q },
      both: { b: (2 * p - q) / (2 * (p * p + q * q - p * q)), c: (2 * q - p) / (2 * (p * p + q * q - p * q)) },
    };
    expect(q < p / 2 ? 'b' : p < q / 2 ? 'c' : 'both').toBe(gives);
    const { b, c } = ways[gives];
    const alpha = (change.ringSumDeg * RADIANS_PER_DEGREE) / 8;
    expect(alpha).toBeGreaterThan(0.001);
    // The gaps follow the maps of first order, the sum is exact.
    const closeTo = (gap: number, truth: number) =>
      expect(Math.abs(gap - truth)).toBeLessThan(0.02 * alpha * (b + c) * 2);
    closeTo(change.insideGapMm, 2 * alpha * (b + c));
    closeTo(change.outsideGapMm, 2 * alpha * c);
    expect(change.jointOpeningMm).toBe(-change.insideGapMm);
  });
});

describe('clear opening', () => {
  test('changes as that of a ring built from the shrunk staves at the same slope', () => {
    fc.assert(
      fc.property(anyRing, anyShrinkage, (ring, shrinkage) => {
        const piece = pieceOf(ring);
        const before = ringGeometry(piece);
        const after = ringGeometry({
          ...piece,
          size: { by: 'staveWidth', mm: piece.size.mm * (1 - shrinkage.alongRing) },
          heightMm: piece.heightMm * (1 - shrinkage.upFace),
          thicknessMm: piece.thicknessMm * (1 - shrinkage.throughThickness),
        });
        expect(seasonChange(before, shrinkage).clearOpeningGainMm).toBeCloseTo(
          after.clearOpeningNarrowMm - before.clearOpeningNarrowMm,
          8,
        );
      }),
    );
  });
});
