/**
 * The touch rule for a ring pulled up all at once: the least-cost closing with openings of either sign, then each
 * joint's parts pushed together until they first touch. Exact for a shared bevel error, too large for mixed random ones;
 * a preview. Pushing together takes the common part `a` of a joint's opening out, so only b and c are worked out.
 *
 * All joints are alike but for their place around the ring, so b and c of joint j are p + q·cos φ + s·sin φ with
 * φ = 2πj/N and six numbers p, q, s linear in the misclosure.
 */
import type { JointGive } from './joint-give';

/** An opening beyond this does not close, mm. */
export const WILL_NOT_CLOSE_MM = 2;

/** Fills the largest openings of every joint, outer and inner, mm; returns whether none is too wide to close. */
export type TouchClosing = (r: Float64Array, at: number, rows: Float64Array, rowsAt: number) => boolean;

/** (p, q, s) rows of 6 from the row of joint N − 1, whose φ is one step short of a full turn. */
function aroundTheRing(row: Float64Array, angle: number): Float64Array {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const out = new Float64Array(18);
  for (const o of [0, 3]) {
    // The row turned back to φ = 0.
    const x = c * row[o]! + s * row[o + 1]!;
    const y = -s * row[o]! + c * row[o + 1]!;
    out[o + 2] = row[o + 2]!;
    out[6 + o] = x;
    out[6 + o + 1] = y;
    out[12 + o] = -y;
    out[12 + o + 1] = x;
  }
  return out;
}

export function touchClosing(give: JointGive, outer: Float64Array, inner: Float64Array): TouchClosing {
  const n = give.maps.sides;
  const last = (n - 1) * 18;
  const angle = (2 * Math.PI * (n - 1)) / n;
  const bWave = aroundTheRing(give.linear.subarray(last + 6, last + 12), angle);
  const cWave = aroundTheRing(give.linear.subarray(last + 12, last + 18), angle);
  const cosines = Float64Array.from({ length: n }, (_, j) => Math.cos((2 * Math.PI * j) / n));
  const sines = Float64Array.from({ length: n }, (_, j) => Math.sin((2 * Math.PI * j) / n));
  const waves = new Float64Array(6);

  return (r, at, rows, rowsAt) => {
    for (let w = 0; w < 3; w++) {
      let b = 0;
      let c = 0;
      for (let k = 0; k < 6; k++) {
        b += bWave[w * 6 + k]! * r[at + k]!;
        c += cWave[w * 6 + k]! * r[at + k]!;
      }
      waves[w] = b;
      waves[w + 3] = c;
    }
    const bp = waves[0]!;
    const bq = waves[1]!;
    const bs = waves[2]!;
    const cp = waves[3]!;
    const cq = waves[4]!;
    const cs = waves[5]!;
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
