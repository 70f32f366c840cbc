/**
 * The touch rule for a ring pulled up all at once: the least-cost closing with openings of either sign, then each
 * joint's parts pushed together until they first touch. Exact for a shared bevel error, too large for mixed random ones;
 * a preview. Pushing together takes the common part `a` of a joint's opening out, so only b and c are worked out.
 *
 * All joints are alike but for their place around the ring, so b and c of joint j are p + q·cos φ + s·sin φ with
 * φ = 2πj/N and six numbers p, q, s linear in the misclosure.
 */
import { WILL_NOT_CLOSE_MM } from '../geometry/thresholds';
import type { JointGive } from './joint-give';

type Six = [number, number, number, number, number, number];

/** Fills the largest openings of every joint, outer and inner, mm; returns whether none is too wide to close. */
export type TouchClosing = (r: Float64Array, at: number, rows: Float64Array, rowsAt: number) => boolean;

/** The row of joint N − 1, whose φ is one step short of a full turn, turned back to φ = 0. */
function turnedBack(row: Float64Array, angle: number): Float64Array {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const out = Float64Array.from(row);
  for (const o of [0, 3]) {
    out[o] = c * row[o]! + s * row[o + 1]!;
    out[o + 1] = -s * row[o]! + c * row[o + 1]!;
  }
  return out;
}

export function touchClosing(give: JointGive, outer: Float64Array, inner: Float64Array): TouchClosing {
  const n = give.maps.sides;
  const last = (n - 1) * 18;
  const angle = (2 * Math.PI * (n - 1)) / n;
  const [b0, b1, b2, b3, b4, b5] = turnedBack(give.linear.subarray(last + 6, last + 12), angle) as unknown as Six;
  const [c0, c1, c2, c3, c4, c5] = turnedBack(give.linear.subarray(last + 12, last + 18), angle) as unknown as Six;
  const cosines = Float64Array.from({ length: n }, (_, j) => Math.cos((2 * Math.PI * j) / n));
  const sines = Float64Array.from({ length: n }, (_, j) => Math.sin((2 * Math.PI * j) / n));

  return (r, at, rows, rowsAt) => {
    const r0 = r[at]!;
    const r1 = r[at + 1]!;
    const r2 = r[at + 2]!;
    const r3 = r[at + 3]!;
    const r4 = r[at + 4]!;
    const r5 = r[at + 5]!;
    const bp = b2 * r2 + b5 * r5;
    const bq = b0 * r0 + b1 * r1 + b3 * r3 + b4 * r4;
    const bs = b0 * r1 - b1 * r0 + b3 * r4 - b4 * r3;
    const cp = c2 * r2 + c5 * r5;
    const cq = c0 * r0 + c1 * r1 + c3 * r3 + c4 * r4;
    const cs = c0 * r1 - c1 * r0 + c3 * r4 - c4 * r3;
    let closes = true;
    for (let j = 0; j < n; j++) {
      const cos = cosines[j]!;
      const sin = sines[j]!;
      const b = bp + bq * cos + bs * sin;
      const c = cp + cq * cos + cs * sin;
      const bottom = rows[rowsAt + j]! - c;
      const top = rows[rowsAt + 2 * n + j]! + c;
      // Largest less smallest of the three rows. Absolute values, since guessing wrong at a branch costs more than all this.
      const lean = 0.5 * Math.abs(top - bottom);
      const middle = rows[rowsAt + n + j]! - 0.5 * (top + bottom);
      const spread = lean + 0.5 * (Math.abs(lean - middle) + Math.abs(lean + middle));
      const turned = Math.abs(b);
      // One side stands open by the turn about the edge, the other touches.
      outer[j] = spread + (turned + b);
      inner[j] = spread + (turned - b);
      if (spread + 2 * turned > WILL_NOT_CLOSE_MM) closes = false;
    }
    return closes;
  };
}
