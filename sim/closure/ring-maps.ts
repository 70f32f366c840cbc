/**
 * First-order maps of a ring about its nominal form: what each cutting error does to the misclosure, what each small
 * give of a joint does to it, and how the mouth and the clear openings follow.
 *
 * A motion is six numbers in millimetres: (scale·rotation, translation of the ring's centre); `scaleMm`, the corner
 * radius at mid-height, puts rotations and shifts on one footing. Radians throughout.
 */
import { leftFace, nominalPose, rightFace } from '../geometry/faces';
import type { RingGeometry } from '../geometry/ring';
import { add, cross, place, scale, turn, type Vector } from '../geometry/vectors';

/** Order of the five errors of a stave in every vector of face errors (length 5N, stave by stave). */
export const BEVEL_RIGHT = 0;
export const BEVEL_LEFT = 1;
export const CROSSCUT_RIGHT = 2;
export const CROSSCUT_LEFT = 3;
export const WIDTH = 4;
export const ERRORS_PER_STAVE = 5;

export interface RingMaps {
  geometry: RingGeometry;
  sides: number;
  scaleMm: number;
  /** 5N columns of 6: misclosure per radian (or mm of width) of each face error. */
  errorColumns: Float64Array;
  /** Which joint takes each error up, 5N. */
  errorJoint: Int32Array;
  /** Per joint three columns of 6: misclosure per mm of the opening movements a, b, c. */
  openingColumns: Float64Array;
  /** Per joint three columns of 6: per radian of turn in the face, per mm of slide up the edge and through the thickness. */
  slideColumns: Float64Array;
  /** Mouth at mid-height per unit of misclosure, at the outer and the inner edge (row vectors of 6). */
  mouthOuter: Float64Array;
  mouthInner: Float64Array;
  /** Per stave a row of 6: outward shift of its inner face at the narrow end, mid-width, per unit of its motion. */
  innerPointRows: Float64Array;
}

/** The motion (rotation `angle`, shift `shift` at point `at`) as six numbers. */
function writeMotion(
  out: Float64Array,
  column: number,
  scaleMm: number,
  angle: Vector,
  shift: Vector,
  at: Vector,
): void {
  const atCentre = add(shift, cross(at, angle));
  const o = column * 6;
  for (let k = 0; k < 3; k++) {
    out[o + k] = scaleMm * angle[k]!;
    out[o + 3 + k] = atCentre[k]!;
  }
}

/** The row that gives direction·(shift of `point`) for a motion of six numbers. */
function pointRow(scaleMm: number, point: Vector, direction: Vector): Float64Array {
  const turning = cross(point, direction);
  return Float64Array.of(
    turning[0] / scaleMm,
    turning[1] / scaleMm,
    turning[2] / scaleMm,
    direction[0],
    direction[1],
    direction[2],
  );
}

const ZERO: Vector = [0, 0, 0];

/** Builds the maps of a ring whose nominal sizes are all above zero. */
export function ringMaps(geometry: RingGeometry): RingMaps {
  const n = geometry.sides;
  const scaleMm = geometry.midInradiusMm / Math.cos(geometry.halfTurnRad);
  const right = rightFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
  const left = leftFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
  const L = geometry.jointLengthMm;
  const H = geometry.edgeLengthMm;
  const maps: RingMaps = {
    geometry,
    sides: n,
    scaleMm,
    errorColumns: new Float64Array(n * ERRORS_PER_STAVE * 6),
    errorJoint: new Int32Array(n * ERRORS_PER_STAVE),
    openingColumns: new Float64Array(n * 18),
    slideColumns: new Float64Array(n * 18),
    mouthOuter: new Float64Array(6),
    mouthInner: new Float64Array(6),
    innerPointRows: new Float64Array(n * 6),
  };
  for (let i = 0; i < n; i++) {
    const pose = nominalPose(geometry, i);
    const [x, , z] = pose.axes;
    const at = place(pose, right.at);
    const e = turn(pose, right.e);
    const b = turn(pose, right.b);
    const normal = turn(pose, right.n);
    const first = i * ERRORS_PER_STAVE;
    const leftAt = place(pose, left.at);
    const cause = (error: number, angle: Vector, shift: Vector, where: Vector) =>
      writeMotion(maps.errorColumns, first + error, scaleMm, angle, shift, where);
    cause(BEVEL_RIGHT, e, ZERO, at);
    cause(BEVEL_LEFT, turn(pose, left.e), ZERO, leftAt);
    cause(CROSSCUT_RIGHT, z, ZERO, at);
    cause(CROSSCUT_LEFT, z, ZERO, leftAt);
    // Half the extra width pushes the next joint on, the other half pushes this stave on from the one before.
    cause(WIDTH, ZERO, x, at);
    for (let k = 0; k < ERRORS_PER_STAVE; k++) maps.errorJoint[first + k] = i;
    maps.errorJoint[first + BEVEL_LEFT] = (i + n - 1) % n;
    maps.errorJoint[first + CROSSCUT_LEFT] = (i + n - 1) % n;

    const middle = add(at, scale(b, L / 2));
    const give = (columns: Float64Array, k: number, angle: Vector, shift: Vector) =>
      writeMotion(columns, i * 3 + k, scaleMm, angle, shift, middle);
    give(maps.openingColumns, 0, ZERO, normal);
    give(maps.openingColumns, 1, scale(e, 2 / L), ZERO);
    give(maps.openingColumns, 2, scale(b, 2 / H), ZERO);
    give(maps.slideColumns, 0, normal, ZERO);
    give(maps.slideColumns, 1, ZERO, e);
    give(maps.slideColumns, 2, ZERO, b);

    // The closing joint undoes the whole misclosure, hence the minus.
    if (i === n - 1) {
      const inwards = scale(normal, -1);
      maps.mouthOuter.set(pointRow(scaleMm, at, inwards));
      maps.mouthInner.set(pointRow(scaleMm, add(at, scale(b, L)), inwards));
    }
    const radial = scale(pose.at, 1 / geometry.midInradiusMm);
    const inner = place(pose, [0, geometry.heightMm / 2, -geometry.thicknessMm]);
    maps.innerPointRows.set(pointRow(scaleMm, inner, radial), i * 6);
  }
  return maps;
}

/** Misclosure (6 numbers, mm) of a ring with the given face errors (5N, stave by stave). */
export function misclosureOf(maps: RingMaps, faceErrors: Float64Array): Float64Array {
  const r = new Float64Array(6);
  for (let j = 0; j < faceErrors.length; j++) {
    for (let k = 0; k < 6; k++) r[k]! += maps.errorColumns[j * 6 + k]! * faceErrors[j]!;
  }
  return r;
}

/** Row times vector, six terms. */
export function along(row: Float64Array, r: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < 6; k++) sum += row[k]! * r[k]!;
  return sum;
}
