/**
 * The exact chain: stave after stave is mated to the one before it, outer edges and mid-height points meeting. With
 * perfect faces it returns to its start for every number of sides and every slope; with errors it misses.
 */
import { leftFrame, nominalPose, rightFrame, type StaveErrors } from '../geometry/faces';
import type { RingGeometry } from '../geometry/ring';
import { compose, type Frame, inverse } from '../geometry/vectors';

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
