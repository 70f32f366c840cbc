/** Rigid motions: one after the other, back again, and to and from a rotation vector. */
import { add, cross, dot, type Frame, place, scale, turn, type Vector } from '../../sim/geometry/vectors';

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
