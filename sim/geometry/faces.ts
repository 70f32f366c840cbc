/**
 * Where the two joint faces of a stave lie, with their cutting errors.
 *
 * Stave frame: x along the ring (counter-clockwise from above), y up the face, z outward, origin at the middle of the
 * outer face. Millimetres and radians.
 */
import type { RingGeometry } from './ring';
import type { Frame, Vector } from './vectors';

/** Errors of one stave: bevel and crosscut of either face, and of the width at mid-height. */
export interface StaveErrors {
  bevelRight: number;
  bevelLeft: number;
  crosscutRight: number;
  crosscutLeft: number;
  width: number;
}

export const PERFECT: StaveErrors = { bevelRight: 0, bevelLeft: 0, crosscutRight: 0, crosscutLeft: 0, width: 0 };

/** e up the edge, b through the thickness (inward), n = out of the wood, and the mid-height point of the outer edge. */
export interface Face {
  at: Vector;
  e: Vector;
  b: Vector;
  n: Vector;
}

export function rightFace(bevel: number, crosscut: number, width: number): Face {
  const [cosB, sinB] = [Math.cos(bevel), Math.sin(bevel)];
  const [cosM, sinM] = [Math.cos(crosscut), Math.sin(crosscut)];
  return {
    at: [width / 2, 0, 0],
    e: [-sinM, cosM, 0],
    b: [-sinB * cosM, -sinB * sinM, -cosB],
    n: [cosB * cosM, cosB * sinM, -sinB],
  };
}

const mirrored = (v: Vector): Vector => [-v[0], v[1], v[2]];

export function leftFace(bevel: number, crosscut: number, width: number): Face {
  const right = rightFace(bevel, crosscut, width);
  return { at: mirrored(right.at), e: mirrored(right.e), b: mirrored(right.b), n: mirrored(right.n) };
}

/** Right-handed frame (e, b, e×b) of a face: e×b points into the wood on the right face, out of it on the left. */
function frameOf(face: Face, outOfWood: boolean): Frame {
  const n = face.n;
  return { at: face.at, axes: [face.e, face.b, outOfWood ? n : [-n[0], -n[1], -n[2]]] };
}

export function rightFrame(geometry: RingGeometry, errors: StaveErrors): Frame {
  return frameOf(
    rightFace(
      geometry.bevelRad + errors.bevelRight,
      geometry.crosscutRad + errors.crosscutRight,
      geometry.staveWidthMidMm + errors.width,
    ),
    false,
  );
}

export function leftFrame(geometry: RingGeometry, errors: StaveErrors): Frame {
  return frameOf(
    leftFace(
      geometry.bevelRad + errors.bevelLeft,
      geometry.crosscutRad + errors.crosscutLeft,
      geometry.staveWidthMidMm + errors.width,
    ),
    true,
  );
}

/** Stave i's frame in the closed nominal ring: origin on the ring's axis at mid-height, z up. */
export function nominalPose(geometry: RingGeometry, stave: number): Frame {
  const angle = 2 * geometry.halfTurnRad * stave;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [cosS, sinS] = [Math.cos(geometry.slopeRad), Math.sin(geometry.slopeRad)];
  return {
    at: [geometry.midInradiusMm * c, geometry.midInradiusMm * s, 0],
    axes: [
      [-s, c, 0],
      [-sinS * c, -sinS * s, cosS],
      [cosS * c, cosS * s, sinS],
    ],
  };
}
