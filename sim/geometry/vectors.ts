/** Three-vectors and rigid motions, just what the ring needs. */
export type Vector = readonly [number, number, number];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const scale = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** A place and three orthonormal axes; as a motion it carries the point (u, v, w) to `at` + u·axes[0] + v·axes[1] + w·axes[2]. */
export interface Frame {
  at: Vector;
  axes: readonly [Vector, Vector, Vector];
}

export const turn = (frame: Frame, v: Vector): Vector =>
  add(add(scale(frame.axes[0], v[0]), scale(frame.axes[1], v[1])), scale(frame.axes[2], v[2]));

export const place = (frame: Frame, point: Vector): Vector => add(frame.at, turn(frame, point));
