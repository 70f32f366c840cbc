/**
 * How a ring may give: which joints are still free when it is pulled up, and at what cost. Shared by the `touch` and
 * the `contact` rule.
 *
 * Each free joint has the opening movements (a, b, c) with unit cost and three slides (turn in the face, along the edge,
 * through the thickness). Cost per joint, divided by 4: a² + b² + c² + wω·ω² + ρa·τe² + τo², with
 * wω = (H² + ρa·L²)/4: the sum of squared corner openings and corner slides. ρa is 1 with the ends held flush, 0.01
 * with the ends free. Millimetres and radians.
 */
import type { Ends } from '../project/document';
import type { RingMaps } from './ring-maps';

export const FREE_END_WEIGHT = 0.01;

export interface JointGive {
  maps: RingMaps;
  /** Indices of the free joints, ascending. */
  free: Int32Array;
  /** Per free joint three columns of 6 for a, b, c. */
  openings: Float64Array;
  /** Σ (slide column)(slide column)ᵀ / weight, 6×6. */
  slideStiffness: Float64Array;
  /** Inverse of slideStiffness + Σ (opening column)(opening column)ᵀ, 6×6. */
  linearInverse: Float64Array;
  /** 3F rows of 6: the least-cost (a, b, c) per unit of misclosure when openings may also be negative. */
  linear: Float64Array;
  /** Weights of the three slides. */
  slideWeights: readonly [number, number, number];
}

/** Inverse of a symmetric positive definite 6×6 matrix by Gauss–Jordan with pivoting. Throws when it is singular. */
export function inverse6(matrix: Float64Array): Float64Array {
  const m = Float64Array.from(matrix);
  const inv = new Float64Array(36);
  for (let k = 0; k < 6; k++) inv[k * 7] = 1;
  for (let k = 0; k < 6; k++) {
    let pivot = k;
    for (let i = k + 1; i < 6; i++) if (Math.abs(m[i * 6 + k]!) > Math.abs(m[pivot * 6 + k]!)) pivot = i;
    const p = m[pivot * 6 + k]!;
    if (!(Math.abs(p) > 0)) throw new Error('The joints left free cannot close the ring in every direction.');
    for (let j = 0; j < 6; j++) {
      for (const a of [m, inv]) {
        const kept = a[k * 6 + j]!;
        a[k * 6 + j] = a[pivot * 6 + j]! / p;
        if (pivot !== k) a[pivot * 6 + j] = kept;
      }
    }
    for (let i = 0; i < 6; i++) {
      const factor = i === k ? 0 : m[i * 6 + k]!;
      if (factor === 0) continue;
      for (let j = 0; j < 6; j++) {
        m[i * 6 + j]! -= factor * m[k * 6 + j]!;
        inv[i * 6 + j]! -= factor * inv[k * 6 + j]!;
      }
    }
  }
  return inv;
}

function addOuter(out: Float64Array, columns: Float64Array, at: number, weight: number): void {
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) out[i * 6 + j]! += weight * columns[at + i]! * columns[at + j]!;
  }
}

/** The last `count` joints of the ring, or all of them. */
export function lastJoints(sides: number, count: number): Int32Array {
  return Int32Array.from({ length: count }, (_, k) => sides - count + k);
}

export function jointGive(maps: RingMaps, free: Int32Array, ends: Ends): JointGive {
  const { jointLengthMm: L, edgeLengthMm: H } = maps.geometry;
  const along = ends === 'flush' ? 1 : FREE_END_WEIGHT;
  const slideWeights = [(H * H + along * L * L) / 4, along, 1] as const;
  const openings = new Float64Array(free.length * 18);
  const slideStiffness = new Float64Array(36);
  const total = new Float64Array(36);
  free.forEach((joint, f) => {
    openings.set(maps.openingColumns.subarray(joint * 18, joint * 18 + 18), f * 18);
    for (let k = 0; k < 3; k++) {
      addOuter(slideStiffness, maps.slideColumns, joint * 18 + k * 6, 1 / slideWeights[k]!);
      addOuter(total, openings, f * 18 + k * 6, 1);
    }
  });
  for (let k = 0; k < 36; k++) total[k]! += slideStiffness[k]!;
  const linearInverse = inverse6(total);
  const linear = new Float64Array(free.length * 18);
  for (let row = 0; row < free.length * 3; row++) {
    for (let j = 0; j < 6; j++) {
      let sum = 0;
      for (let k = 0; k < 6; k++) sum += openings[row * 6 + k]! * linearInverse[k * 6 + j]!;
      linear[row * 6 + j] = -sum;
    }
  }
  return { maps, free, openings, slideStiffness, linearInverse, linear, slideWeights };
}

/** A row of 6 per free joint: how far one stave steps out past the next, through the thickness, per unit of λ. */
export function stepRows(give: JointGive): Float64Array {
  const rows = new Float64Array(give.free.length * 6);
  give.free.forEach((joint, f) => {
    const column = give.maps.slideColumns.subarray(joint * 18 + 12, joint * 18 + 18);
    column.forEach((value, k) => {
      rows[f * 6 + k] = -value / give.slideWeights[2];
    });
  });
  return rows;
}

/** Largest of a few rows of 6 times a vector, in size. */
export function largestAlong(rows: Float64Array, vector: Float64Array): number {
  let most = 0;
  for (let k = 0; k < rows.length; k += 6) {
    const value =
      rows[k]! * vector[0]! +
      rows[k + 1]! * vector[1]! +
      rows[k + 2]! * vector[2]! +
      rows[k + 3]! * vector[3]! +
      rows[k + 4]! * vector[4]! +
      rows[k + 5]! * vector[5]!;
    most = Math.max(most, Math.abs(value));
  }
  return most;
}

/** The same rows for a misclosure in place of λ, by the linear map. */
export function inMisclosure(rows: Float64Array, linearInverse: Float64Array): Float64Array {
  const out = new Float64Array(rows.length);
  for (let row = 0; row < rows.length; row += 6) {
    for (let j = 0; j < 6; j++) {
      for (let k = 0; k < 6; k++) out[row + j]! += rows[row + k]! * linearInverse[k * 6 + j]!;
    }
  }
  return out;
}
