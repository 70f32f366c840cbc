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

/** First `inner`, then `outer`. */
export function compose(outer: Frame, inner: Frame): Frame {
  return {
    at: place(outer, inner.at),
    axes: [turn(outer, inner.axes[0]), turn(outer, inner.axes[1]), turn(outer, inner.axes[2])],
  };
}

export function inverse(frame: Frame): Frame {
  const [x, y, z] = frame.axes;
  const axes: Frame['axes'] = [
    [x[0], y[0], z[0]],
    [x[1], y[1], z[1]],
    [x[2], y[2], z[2]],
  ];
  return { at: scale(turn({ at: [0, 0, 0], axes }, frame.at), -1), axes };
}

/** Rotation by `angle` (a vector along the axis, length in radians) about the origin, then a shift. */
export function motion(angle: Vector, shift: Vector): Frame {
  const size = Math.hypot(angle[0], angle[1], angle[2]);
  const k: Vector = size > 0 ? [angle[0] / size, angle[1] / size, angle[2] / size] : [0, 0, 1];
  const c = Math.cos(size);
  const s = Math.sin(size);
  const rotate = (v: Vector): Vector => add(add(scale(v, c), scale(cross(k, v), s)), scale(k, dot(k, v) * (1 - c)));
  return { at: shift, axes: [rotate([1, 0, 0]), rotate([0, 1, 0]), rotate([0, 0, 1])] };
}

/** The rotation of a frame as a vector along its axis, length in radians; for angles well below π. */
export function rotationVector(frame: Frame): Vector {
  const [x, y, z] = frame.axes;
  const twiceSine: Vector = [y[2] - z[1], z[0] - x[2], x[1] - y[0]];
  const sine = Math.hypot(...twiceSine) / 2;
  const cosine = (x[0] + y[1] + z[2] - 1) / 2;
  const angle = Math.atan2(sine, cosine);
  return scale(twiceSine, sine > 1e-12 ? angle / (2 * sine) : 0.5);
}
