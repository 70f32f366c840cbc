/**
 * The exact chain: stave after stave is mated to the one before it, outer edges and mid-height points meeting. With
 * perfect faces it returns to its start for every number of sides and every slope; with errors it misses.
 */
import type { RingMaps } from '../../sim/closure/ring-maps';
import { type Face, leftFace, nominalPose, rightFace } from '../../sim/geometry/faces';
import type { RingGeometry } from '../../sim/geometry/ring';
import type { Frame } from '../../sim/geometry/vectors';
import { compose, inverse } from './motions';

/** Errors of one stave: bevel and crosscut of either face, and of the width at mid-height. */
export interface StaveErrors {
  bevelRight: number;
  bevelLeft: number;
  crosscutRight: number;
  crosscutLeft: number;
  width: number;
}

export const PERFECT: StaveErrors = { bevelRight: 0, bevelLeft: 0, crosscutRight: 0, crosscutLeft: 0, width: 0 };

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

/**
 * Poses of staves 0…N (N + 1 of them): stave 0 where it belongs, the last one where stave 0 would come to lie again.
 * `give(i)` moves the left face of stave i + 1 against the right face of stave i, in the frame of that face.
 */
export function chainPoses(
  geometry: RingGeometry,
  errors: readonly StaveErrors[],
  give?: (joint: number) => Frame,
): Frame[] {
  const poses = [nominalPose(geometry, 0)];
  for (let i = 0; i < geometry.sides; i++) {
    const next = errors[(i + 1) % geometry.sides]!;
    const right = compose(poses[i]!, rightFrame(geometry, errors[i]!));
    const mated = give ? compose(right, give(i)) : right;
    poses.push(compose(mated, inverse(leftFrame(geometry, next))));
  }
  return poses;
}

/** How far the chain misses its start, as a motion in the ring's own frame: identity for a perfect ring. */
export function misclosure(
  geometry: RingGeometry,
  errors: readonly StaveErrors[],
  give?: (joint: number) => Frame,
): Frame {
  const poses = chainPoses(geometry, errors, give);
  return compose(poses[geometry.sides]!, inverse(poses[0]!));
}

/** Rotation part of a misclosure, radians. */
export function misclosureAngle(maps: RingMaps, r: Float64Array): number {
  return Math.hypot(r[0]!, r[1]!, r[2]!) / maps.scaleMm;
}
