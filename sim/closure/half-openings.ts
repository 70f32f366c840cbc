/**
 * How the clear half-openings follow from the face errors, to first order and with the ring pulled up by the linear
 * least-cost map. Half-opening of stave i: from the ring's least-squares axis to the stave's inner face at the narrow
 * end, mid-width. Moving or leaning the axis changes these N distances by a first harmonic around the ring, so the
 * least-squares axis takes just that harmonic out. Millimetres and radians.
 */
import type { JointGive } from './joint-give';
import { ERRORS_PER_STAVE, type RingMaps, WIDTH } from './ring-maps';

/** Motion each joint gives per unit of misclosure, N matrices of 6×6; zero at joints that are hard. */
function givePerMisclosure(give: JointGive): Float64Array {
  const { maps, linearInverse } = give;
  const out = new Float64Array(maps.sides * 36);
  for (const joint of give.free) {
    const stiffness = new Float64Array(36);
    for (let k = 0; k < 3; k++) {
      const at = joint * 18 + k * 6;
      for (let i = 0; i < 6; i++) {
        for (let j = 0; j < 6; j++) {
          stiffness[i * 6 + j]! +=
            maps.openingColumns[at + i]! * maps.openingColumns[at + j]! +
            (maps.slideColumns[at + i]! * maps.slideColumns[at + j]!) / give.slideWeights[k]!;
        }
      }
    }
    for (let i = 0; i < 6; i++) {
      for (let j = 0; j < 6; j++) {
        let sum = 0;
        for (let k = 0; k < 6; k++) sum += stiffness[i * 6 + k]! * linearInverse[k * 6 + j]!;
        out[joint * 36 + i * 6 + j] = -sum;
      }
    }
  }
  return out;
}

/** Takes the first harmonic (cosine and sine once around) out of n values in place. */
export function removeFirstHarmonic(values: Float64Array): void {
  const n = values.length;
  let [c, s] = [0, 0];
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * i) / n;
    c += (2 / n) * values[i]! * Math.cos(angle);
    s += (2 / n) * values[i]! * Math.sin(angle);
  }
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * i) / n;
    values[i]! -= c * Math.cos(angle) + s * Math.sin(angle);
  }
}

/** 5N columns of N: change of every half-opening per radian (or mm of width) of each face error. */
export function halfOpeningColumns(maps: RingMaps, give: JointGive): Float64Array {
  const n = maps.sides;
  const perMisclosure = givePerMisclosure(give);
  const columns = new Float64Array(n * ERRORS_PER_STAVE * n);
  const motion = new Float64Array(6);
  for (let error = 0; error < n * ERRORS_PER_STAVE; error++) {
    const own = maps.errorColumns.subarray(error * 6, error * 6 + 6);
    const joint = maps.errorJoint[error]!;
    const isWidth = error % ERRORS_PER_STAVE === WIDTH;
    const before = (joint + n - 1) % n;
    const shifts = columns.subarray(error * n, error * n + n);
    motion.fill(0);
    for (let i = 0; i < n; i++) {
      let outward = 0;
      for (let k = 0; k < 6; k++) outward += maps.innerPointRows[i * 6 + k]! * motion[k]!;
      shifts[i] = outward;
      // On to the next stave, across joint i.
      const share = isWidth ? (i === joint || i === before ? 0.5 : 0) : i === joint ? 1 : 0;
      for (let k = 0; k < 6; k++) {
        let moved = share * own[k]!;
        for (let m = 0; m < 6; m++) moved += perMisclosure[i * 36 + k * 6 + m]! * own[m]!;
        motion[k]! += moved;
      }
    }
    removeFirstHarmonic(shifts);
  }
  return columns;
}

/** Largest less smallest width across the flats, from the N half-openings; odd rings are measured flat to corner. */
export function outOfRound(half: Float64Array, n: number): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const odd = n % 2;
  for (let i = 0, opposite = Math.floor(n / 2); i < n; i++) {
    const next = opposite + 1 === n ? 0 : opposite + 1;
    const flats = half[i]! + (odd ? (half[opposite]! + half[next]!) / 2 : half[opposite]!);
    if (flats < least) least = flats;
    if (flats > most) most = flats;
    opposite = next;
  }
  return most - least;
}
