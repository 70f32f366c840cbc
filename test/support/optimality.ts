/**
 * Is this the least-cost set that closes the ring? The cost is strictly convex and the set convex, so the answer is yes
 * exactly if the Karush–Kuhn–Tucker conditions hold; they are checked here from the definition of the cost, without any
 * of the solver's own shortcuts. Source: S. Boyd and L. Vandenberghe, Convex Optimization (2004), 5.5.3.
 */
import type { ContactSolver } from '../../sim/closure/contact';
import type { Ends } from '../../sim/project/document';

type Triple = readonly [number, number, number];

/** What is left of `d` after the nearest non-negative sum of the normals is taken away: least squares, by enumeration. */
export function distanceToCone(d: Triple, normals: readonly Triple[]): number {
  let nearest = Math.hypot(...d);
  const tryThese = (chosen: readonly Triple[]): void => {
    const weights = leastSquares(d, chosen);
    if (!weights || weights.some((w) => w < 0)) return;
    const rest = [0, 1, 2].map((i) => d[i]! - chosen.reduce((sum, normal, k) => sum + weights[k]! * normal[i]!, 0));
    nearest = Math.min(nearest, Math.hypot(...rest));
  };
  normals.forEach((first, i) => {
    tryThese([first]);
    normals.slice(i + 1).forEach((second, j) => {
      tryThese([first, second]);
      // Three at most are ever needed (Carathéodory).
      for (const third of normals.slice(i + j + 2)) tryThese([first, second, third]);
    });
  });
  return nearest;
}

/** Weights of the chosen vectors that come nearest to d; undefined when they are not independent. */
function leastSquares(d: Triple, chosen: readonly Triple[]): number[] | undefined {
  const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const m = chosen.map((a) => [...chosen.map((b) => dot(a, b)), dot(a, d)]);
  const n = chosen.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]![k]!) > Math.abs(m[pivot]![k]!)) pivot = i;
    [m[k], m[pivot]] = [m[pivot]!, m[k]!];
    if (Math.abs(m[k]![k]!) < 1e-9) return undefined;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const share = m[i]![k]! / m[k]![k]!;
      for (let j = k; j <= n; j++) m[i]![j]! -= share * m[k]![j]!;
    }
  }
  return m.map((row, k) => row[n]! / row[k]!);
}

/** How far a solution is from each condition, mm. */
export interface Shortfalls {
  /** The ring closes: Σ A·x + r. */
  closure: number;
  /** Wood in wood: how far below zero the smallest opening is. */
  overlap: number;
  /** Cost's slope against the closure's pull and the pressure of the joints in contact, which must only push. */
  stationarity: number;
}

const ROW = [-1, 0, 1] as const;
const SIDE = [1, -1] as const;
/** Openings below this count as touching, mm. */
const TOUCHING_MM = 1e-8;

export function shortfalls(
  solver: ContactSolver,
  slidesOf: (joint: number) => Triple,
  ends: Ends,
  r: Float64Array,
  rows: Float64Array,
): Shortfalls {
  const { maps, free } = solver.give;
  const n = maps.sides;
  const { jointLengthMm: L, edgeLengthMm: H } = maps.geometry;
  const endWeight = ends === 'flush' ? 1 : 0.01;
  // The cost of a joint, divided by 4 and with the square of the turn in mm: a² + b² + c² + (H² + ρa·L²)/4·ω² + ρa·τe² + τo².
  const slideWeights: Triple = [(H * H + endWeight * L * L) / 4, endWeight, 1];
  const left = Float64Array.from(r);
  const result: Shortfalls = { closure: 0, overlap: 0, stationarity: 0 };
  free.forEach((joint, f) => {
    const y = solver.openings.subarray(3 * f, 3 * f + 3) as unknown as Triple;
    const slides = slidesOf(joint);
    const pull = (columns: Float64Array, k: number): number => {
      let sum = 0;
      for (let i = 0; i < 6; i++) sum += columns[joint * 18 + 6 * k + i]! * solver.lambda[i]!;
      return sum;
    };
    for (let k = 0; k < 3; k++) {
      for (let i = 0; i < 6; i++) {
        left[i]! += maps.openingColumns[joint * 18 + 6 * k + i]! * y[k]!;
        left[i]! += maps.slideColumns[joint * 18 + 6 * k + i]! * slides[k]!;
      }
      const slide = slideWeights[k]! * slides[k]! + pull(maps.slideColumns, k);
      // A turn's slope is per radian; at half the edge it is the same pull in mm.
      result.stationarity = Math.max(result.stationarity, Math.abs(slide) / (k === 0 ? H / 2 : 1));
    }
    const touching: Triple[] = [];
    ROW.forEach((row, k) => {
      for (const side of SIDE) {
        const opening = y[0] + side * y[1] + row * y[2] + rows[k * n + joint]!;
        result.overlap = Math.max(result.overlap, -opening);
        // Complementarity: only joints that touch may push.
        if (opening < TOUCHING_MM) touching.push([1, side, row]);
      }
    });
    const pushed: Triple = [0, 1, 2].map((k) => y[k]! + pull(maps.openingColumns, k)) as unknown as Triple;
    result.stationarity = Math.max(result.stationarity, distanceToCone(pushed, touching));
  });
  result.closure = Math.max(...left.map(Math.abs));
  return result;
}
