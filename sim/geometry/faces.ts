/**
 * Where the two joint faces of a stave lie, with their cutting errors.
 *
 * Stave frame: x along the ring (counter-clockwise from above), y up the face, z outward, origin at the middle of the
 * outer face. Millimetres and radians.
 */
import type { RingGeometry } from './ring';
import type { Frame, Vector } from './vectors';

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
