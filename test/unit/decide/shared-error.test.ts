import { expect, test } from 'vitest';
import { sharedError } from '../../../sim/decide/shared-error';
import { seenGapMm } from '../../../sim/decide/sight';
import { ringGeometry } from '../../../sim/geometry/ring';
import type { Piece } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';

const { insert: _, ...bare } = exampleProject().piece;
const pieceOf = (changes: Partial<Piece>): Piece => ({ ...bare, ...changes });
const ERROR_DEG = 0.05;
const ERROR_RAD = (ERROR_DEG * Math.PI) / 180;

test('an eye tells apart a ten-thousandth of the distance three times over: tan 1′ = 0.00029089 (tables of tangents)', () => {
  expect(seenGapMm()).toBeCloseTo(400 * 0.00029089, 5);
  expect(seenGapMm(800)).toBeCloseTo(2 * seenGapMm(), 12);
});

/**
 * Upright, every face too small by δ: the 2N faces lack 2Nδ of 360°. With all joints but one tight each of the others
 * turns its neighbours by 2δ about its outer corner, at the circumradius R; along the ring that moves the open joint by
 * 2δ·R·(1 − cos θ), θ the angle between the two, and the sum of that around the ring is 2δ·R·N (derived).
 */
test.each([3, 6, 12, 31])('an upright ring of %i sides opens by 2NδR at the last joint', (sides) => {
  const geometry = ringGeometry(pieceOf({ sides, size: { by: 'outsideFlats', mm: 500 } }));
  const { setting, ringSumDeg, mouthMm } = sharedError(geometry, 'outside', ERROR_DEG);
  expect(setting).toBe('tilt');
  expect(ringSumDeg).toBeCloseTo(-2 * sides * ERROR_DEG, 9);
  expect(mouthMm).toBeCloseTo(2 * sides * ERROR_RAD * (geometry.outsideCornersMm / 2), 6);
});

/** Closed at once, each joint keeps its own 2δ, seen over its length through the thickness (derived). */
test('pulled together, each joint of an upright ring opens by 2δ over its own length', () => {
  const geometry = ringGeometry(pieceOf({}));
  const { jointGapMm } = sharedError(geometry, 'outside', ERROR_DEG);
  expect(jointGapMm).toBeCloseTo(2 * ERROR_RAD * geometry.jointLengthMm, 4);
});

test('a flat frame carries it in the swing', () => {
  const geometry = ringGeometry(pieceOf({ sides: 8, slopeDeg: 90, size: { by: 'clearOpening', mm: 400 } }));
  const { setting, ringSumDeg } = sharedError(geometry, 'both', ERROR_DEG);
  expect(setting).toBe('swing');
  expect(ringSumDeg).toBeCloseTo(-16 * ERROR_DEG, 9);
});
