/** Rings for the tests of the engine: by their mid-height width, at random, and with explicit face errors. */
import fc from 'fast-check';
import { ERRORS_PER_STAVE } from '../../sim/closure/ring-maps';
import { RADIANS_PER_DEGREE, type RingGeometry, ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { PERFECT, type StaveErrors } from './exact-chain';

export interface RingSizes {
  sides: number;
  slopeDeg: number;
  /** Outer stave width at mid-height. */
  midWidthMm: number;
  heightMm: number;
  thicknessMm: number;
}

export function pieceOf(ring: RingSizes): Piece {
  const { sides, slopeDeg, heightMm, thicknessMm } = ring;
  const swing = Math.sin(slopeDeg * RADIANS_PER_DEGREE) * Math.tan(Math.PI / sides);
  return {
    sides,
    slopeDeg,
    grain: 'alongRing',
    size: { by: 'staveWidth', mm: ring.midWidthMm + heightMm * swing },
    heightMm,
    thicknessMm,
    showFace: 'outside',
  };
}

export const geometryOf = (ring: RingSizes): RingGeometry => ringGeometry(pieceOf(ring));

/** Degrees and millimetres for one stave. */
export interface StaveErrorsDeg {
  bevelRightDeg: number;
  bevelLeftDeg: number;
  crosscutRightDeg: number;
  crosscutLeftDeg: number;
  widthMm: number;
}

export const staveErrors = (stave: Partial<StaveErrorsDeg>): StaveErrors => ({
  bevelRight: (stave.bevelRightDeg ?? 0) * RADIANS_PER_DEGREE,
  bevelLeft: (stave.bevelLeftDeg ?? 0) * RADIANS_PER_DEGREE,
  crosscutRight: (stave.crosscutRightDeg ?? 0) * RADIANS_PER_DEGREE,
  crosscutLeft: (stave.crosscutLeftDeg ?? 0) * RADIANS_PER_DEGREE,
  width: stave.widthMm ?? 0,
});

export const sameForAll = (sides: number, errors: Partial<StaveErrorsDeg>): StaveErrors[] =>
  Array.from({ length: sides }, () => staveErrors(errors));

/** The order of the engine's vector of 5N face errors, stave by stave. */
export const ERROR_KEYS = ['bevelRight', 'bevelLeft', 'crosscutRight', 'crosscutLeft', 'width'] as const;

export const faceErrors = (staves: readonly StaveErrors[]): Float64Array =>
  Float64Array.from(staves.flatMap((stave) => ERROR_KEYS.map((key) => stave[key])));

/** Perfect staves but for one entry of the vector of 5N face errors. */
export function withOneError(sides: number, error: number, size: number): StaveErrors[] {
  const staves = Array.from({ length: sides }, () => ({ ...PERFECT }));
  staves[Math.floor(error / ERRORS_PER_STAVE)]![ERROR_KEYS[error % ERRORS_PER_STAVE]!] = size;
  return staves;
}

/** Everything from three-sided boxes to sixty-sided frames, each with an opening left in the middle. */
export const anyRing: fc.Arbitrary<RingSizes> = fc
  .record({
    sides: fc.integer({ min: 3, max: 60 }),
    slopeDeg: fc.oneof(fc.constantFrom(0, 90), fc.double({ min: 0, max: 90, noNaN: true })),
    midWidthMm: fc.double({ min: 20, max: 300, noNaN: true }),
    heightMm: fc.double({ min: 20, max: 500, noNaN: true }),
    thicknessMm: fc.double({ min: 6, max: 40, noNaN: true }),
  })
  .map(withOpening);

/** The same ring with thickness and height cut down until the middle stays open. */
export function withOpening(ring: RingSizes): RingSizes {
  const slope = ring.slopeDeg * RADIANS_PER_DEGREE;
  const radius = ring.midWidthMm / (2 * Math.tan(Math.PI / ring.sides));
  const thicknessMm = Math.min(ring.thicknessMm, 0.5 * radius);
  const room = radius - thicknessMm * Math.cos(slope);
  const heightMm = Math.min(ring.heightMm, (1.8 * room) / Math.max(Math.sin(slope), 1e-9));
  return { ...ring, thicknessMm, heightMm };
}

/** Random numbers for rings that do not come from fast-check: uniform on (−1, 1) from any source of (0, 1). */
export function randomErrors(
  sides: number,
  symmetric: () => number,
  largestDeg: number,
  largestMm: number,
): StaveErrors[] {
  return Array.from({ length: sides }, () =>
    staveErrors({
      bevelRightDeg: largestDeg * symmetric(),
      bevelLeftDeg: largestDeg * symmetric(),
      crosscutRightDeg: largestDeg * symmetric(),
      crosscutLeftDeg: largestDeg * symmetric(),
      widthMm: largestMm * symmetric(),
    }),
  );
}
