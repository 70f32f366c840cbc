/**
 * The contact rule: among all sets that close the ring without wood passing through wood, the one of least cost.
 *
 *     minimise ½ Σ |x|²   subject to   Σ A x = −r   and, in every joint,   a + σ·b + ρ·c + s_ρ ≥ 0
 *
 * for ρ in (bottom −1, middle 0, top +1) and σ = ±1. For given multipliers λ of the six closure equations the slides
 * follow at once and each (a, b, c) is the projection of −Oᵀλ onto {a ≥ |b| + g(c)}, g(c) = max(−ρc − s_ρ), which has a
 * closed form because the two convex parts are separate. What remains is to maximise a concave, piecewise quadratic
 * function of six numbers: semismooth Newton with a little regularisation and a line search (the method is standard; see
 * e.g. Facchinei & Pang, Finite-Dimensional Variational Inequalities and Complementarity Problems, 2003, ch. 7–8).
 * Millimetres and radians; nothing is allocated while solving.
 */
import type { JointGive } from './joint-give';
import { ridgeSolve } from './ridge-solve';

export interface ContactSolver {
  give: JointGive;
  /** (a, b, c) of each free joint after `solve`. */
  openings: Float64Array;
  /** Closure multipliers after `solve`. */
  lambda: Float64Array;
  /** Newton steps the last `solve` took. */
  steps: number;
  /**
   * Closes the ring with misclosure r (6 numbers from `at`). `rows` holds the row offsets of all N joints from `rowsAt`:
   * N bottoms, N middles, N tops. Returns whether it converged.
   */
  solve(r: Float64Array, at: number, rows: Float64Array, rowsAt: number): boolean;
}

const MOST_STEPS = 400;
const MOST_ATTEMPTS = 40;
const RIDGE = 1e-7;
const TOLERANCE_MM = 1e-10;
/** Part of stiffness × multiplier that rounding hides in the closure equations. */
const ROUNDING = 4e-16;
const SQRT_HALF = Math.SQRT1_2;
const SQRT_THIRD = Math.sqrt(1 / 3);

export function contactSolver(give: JointGive): ContactSolver {
  const { free, openings: O, slideStiffness, linearInverse } = give;
  const n = give.maps.sides;
  const F = free.length;
  /** Lowest and highest c at which g is least, and that least value. */
  const flatFrom = new Float64Array(F);
  const flatTo = new Float64Array(F);
  const least = new Float64Array(F);
  /** The whole block of each joint's Hessian, lower triangle of Σ column·columnᵀ. */
  const whole = new Float64Array(F * 21);
  for (let f = 0; f < F; f++) {
    for (let i = 0, t = f * 21; i < 6; i++) {
      for (let j = 0; j <= i; j++, t++) {
        for (let k = 0; k < 3; k++) whole[t]! += O[f * 18 + k * 6 + i]! * O[f * 18 + k * 6 + j]!;
      }
    }
  }
  let gradient = new Float64Array(6);
  let hessian = new Float64Array(21);
  let triedGradient = new Float64Array(6);
  let triedHessian = new Float64Array(21);
  const tried = new Float64Array(6);
  const step = new Float64Array(6);
  const slideLower = new Float64Array(21);
  let trace = 0;
  for (let i = 0, t = 0; i < 6; i++) {
    for (let j = 0; j <= i; j++, t++) slideLower[t] = slideStiffness[i * 6 + j]!;
    trace += slideStiffness[i * 7]!;
  }
  const stiffness = O.reduce((sum, v) => sum + v * v, trace);

  const solver: ContactSolver = {
    give,
    openings: new Float64Array(F * 3),
    lambda: new Float64Array(6),
    steps: 0,
    solve,
  };
  const y = solver.openings;
  const lambda = solver.lambda;

  /** Adds weight·v vᵀ with v = O·(da, db, dc) of joint f. */
  function addDirection(h: Float64Array, f: number, da: number, db: number, dc: number, weight: number): void {
    const o = f * 18;
    const v0 = da * O[o]! + db * O[o + 6]! + dc * O[o + 12]!;
    const v1 = da * O[o + 1]! + db * O[o + 7]! + dc * O[o + 13]!;
    const v2 = da * O[o + 2]! + db * O[o + 8]! + dc * O[o + 14]!;
    const v3 = da * O[o + 3]! + db * O[o + 9]! + dc * O[o + 15]!;
    const v4 = da * O[o + 4]! + db * O[o + 10]! + dc * O[o + 16]!;
    const v5 = da * O[o + 5]! + db * O[o + 11]! + dc * O[o + 17]!;
    const w0 = weight * v0;
    const w1 = weight * v1;
    const w2 = weight * v2;
    const w3 = weight * v3;
    const w4 = weight * v4;
    h[0]! += w0 * v0;
    h[1]! += w1 * v0;
    h[2]! += w1 * v1;
    h[3]! += w2 * v0;
    h[4]! += w2 * v1;
    h[5]! += w2 * v2;
    h[6]! += w3 * v0;
    h[7]! += w3 * v1;
    h[8]! += w3 * v2;
    h[9]! += w3 * v3;
    h[10]! += w4 * v0;
    h[11]! += w4 * v1;
    h[12]! += w4 * v2;
    h[13]! += w4 * v3;
    h[14]! += w4 * v4;
    const w5 = weight * v5;
    h[15]! += w5 * v0;
    h[16]! += w5 * v1;
    h[17]! += w5 * v2;
    h[18]! += w5 * v3;
    h[19]! += w5 * v4;
    h[20]! += w5 * v5;
  }

  /** Dual value at l; fills its gradient and Hessian (negated, so positive semidefinite) and the openings y. */
  function evaluate(l: Float64Array, g: Float64Array, h: Float64Array, r: Float64Array, at: number): number {
    const l0 = l[0]!;
    const l1 = l[1]!;
    const l2 = l[2]!;
    const l3 = l[3]!;
    const l4 = l[4]!;
    const l5 = l[5]!;
    let value = 0;
    for (let i = 0; i < 6; i++) {
      const o = i * 6;
      const slid =
        slideStiffness[o]! * l0 +
        slideStiffness[o + 1]! * l1 +
        slideStiffness[o + 2]! * l2 +
        slideStiffness[o + 3]! * l3 +
        slideStiffness[o + 4]! * l4 +
        slideStiffness[o + 5]! * l5;
      const ri = r[at + i]!;
      g[i] = ri - slid;
      value += l[i]! * (ri - 0.5 * slid);
    }
    for (let t = 0; t < 21; t++) h[t] = slideLower[t]!;
    let g0 = g[0]!;
    let g1 = g[1]!;
    let g2 = g[2]!;
    let g3 = g[3]!;
    let g4 = g[4]!;
    let g5 = g[5]!;
    for (let f = 0; f < F; f++) {
      const o = f * 18;
      const a0 = -(O[o]! * l0 + O[o + 1]! * l1 + O[o + 2]! * l2 + O[o + 3]! * l3 + O[o + 4]! * l4 + O[o + 5]! * l5);
      const b0 = -(
        O[o + 6]! * l0 +
        O[o + 7]! * l1 +
        O[o + 8]! * l2 +
        O[o + 9]! * l3 +
        O[o + 10]! * l4 +
        O[o + 11]! * l5
      );
      const c0 = -(
        O[o + 12]! * l0 +
        O[o + 13]! * l1 +
        O[o + 14]! * l2 +
        O[o + 15]! * l3 +
        O[o + 16]! * l4 +
        O[o + 17]! * l5
      );
      const from = flatFrom[f]!;
      const to = flatTo[f]!;
      const target = Math.max(from, Math.min(c0, to));
      const beta = b0 < 0 ? -b0 : b0;
      const gamma = c0 < target ? target - c0 : c0 - target;
      const p = a0 - least[f]!;
      let a = a0;
      let b = b0;
      let c = c0;
      if (p >= beta + gamma) {
        for (let t = 0, w = f * 21; t < 21; t++, w++) h[t]! += whole[w]!;
      } else {
        const small = Math.min(beta, gamma);
        const large = Math.max(beta, gamma);
        const signB = b0 < 0 ? -1 : 1;
        const signC = c0 < target ? -1 : 1;
        const rolling = from < to && gamma === 0;
        let m = (beta + gamma - p) / 3;
        if (m <= small) {
          // On one face: c and b both still move.
          b = b0 - signB * m;
          c = c0 - signC * m;
          for (let t = 0, w = f * 21; t < 21; t++, w++) h[t]! += whole[w]!;
          addDirection(h, f, SQRT_THIRD, -signB * SQRT_THIRD, -signC * SQRT_THIRD, -1);
        } else {
          m = (large - p) / 2;
          if (m <= large) {
            if (beta < gamma) {
              b = 0;
              c = c0 - signC * m;
              addDirection(h, f, SQRT_HALF, 0, signC * SQRT_HALF, 1);
            } else {
              b = b0 - signB * m;
              c = target;
              addDirection(h, f, SQRT_HALF, signB * SQRT_HALF, 0, 1);
            }
          } else {
            m = -p;
            b = 0;
            c = target;
          }
          // Resting on the middle row alone leaves the joint free to roll.
          if (rolling) addDirection(h, f, 0, 0, 1, 1);
        }
        a = a0 + m;
      }
      y[f * 3] = a;
      y[f * 3 + 1] = b;
      y[f * 3 + 2] = c;
      value += a * (0.5 * a - a0) + b * (0.5 * b - b0) + c * (0.5 * c - c0);
      g0 += a * O[o]! + b * O[o + 6]! + c * O[o + 12]!;
      g1 += a * O[o + 1]! + b * O[o + 7]! + c * O[o + 13]!;
      g2 += a * O[o + 2]! + b * O[o + 8]! + c * O[o + 14]!;
      g3 += a * O[o + 3]! + b * O[o + 9]! + c * O[o + 15]!;
      g4 += a * O[o + 4]! + b * O[o + 10]! + c * O[o + 16]!;
      g5 += a * O[o + 5]! + b * O[o + 11]! + c * O[o + 17]!;
    }
    g[0] = g0;
    g[1] = g1;
    g[2] = g2;
    g[3] = g3;
    g[4] = g4;
    g[5] = g5;
    return value;
  }

  function largest(g: Float64Array): number {
    let most = 0;
    for (let i = 0; i < 6; i++) {
      const size = Math.abs(g[i]!);
      if (!(size <= most)) most = size;
    }
    return most;
  }

  function solve(r: Float64Array, at: number, rows: Float64Array, rowsAt: number): boolean {
    for (let f = 0; f < F; f++) {
      const joint = free[f]!;
      const bottom = rows[rowsAt + joint]!;
      const middle = rows[rowsAt + n + joint]!;
      const top = rows[rowsAt + 2 * n + joint]!;
      const from = middle - top;
      const to = bottom - middle;
      if (from < to) {
        flatFrom[f] = from;
        flatTo[f] = to;
        least[f] = -middle;
      } else {
        flatFrom[f] = flatTo[f] = (bottom - top) / 2;
        least[f] = -(bottom + top) / 2;
      }
    }
    for (let i = 0; i < 6; i++) {
      let sum = 0;
      for (let k = 0; k < 6; k++) sum += linearInverse[i * 6 + k]! * r[at + k]!;
      lambda[i] = sum;
    }
    let value = evaluate(lambda, gradient, hessian, r, at);
    let stiffening = 1;
    solver.steps = 0;
    const enough = TOLERANCE_MM * (1 + 1e-3 * largest(gradient));
    // A few free joints of a wide ring slide far and pull hard; then rounding alone leaves more than the tolerance.
    while (largest(gradient) > enough + ROUNDING * stiffness * largest(lambda)) {
      if (solver.steps > MOST_STEPS) return false;
      // The ridge fades with the gradient, so the last steps are full Newton steps.
      const ridge = stiffening * trace * RIDGE * Math.min(1, largest(gradient));
      if (!ridgeSolve(hessian, ridge, gradient, step)) {
        stiffening *= 100;
        continue;
      }
      stiffening = 1;
      value = ascend(value, r, at);
    }
    return true;
  }

  /** Moves λ along `step` and gives the new value: the whole step, or where the slope along it has all but vanished. */
  function ascend(value: number, r: Float64Array, at: number): number {
    let slopeAtStart = 0;
    for (let i = 0; i < 6; i++) slopeAtStart += gradient[i]! * step[i]!;
    let length = 1;
    let low = 0;
    let lowSlope = slopeAtStart;
    let high = Infinity;
    let highSlope = 0;
    let newValue = value;
    const rounding = 1e-14 * (Math.abs(value) + 1e-3);
    for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
      for (let i = 0; i < 6; i++) tried[i] = lambda[i]! + length * step[i]!;
      newValue = evaluate(tried, triedGradient, triedHessian, r, at);
      solver.steps++;
      let slope = 0;
      for (let i = 0; i < 6; i++) slope += triedGradient[i]! * step[i]!;
      const rose = newValue >= value + 0.1 * length * slopeAtStart - rounding;
      if (rose ? slope <= 0.7 * slopeAtStart : slope >= 0 && slope <= 0.1 * slopeAtStart) break;
      // The slope only falls along the step. Still steep: go on; past the top: close in by secant, never too near an end.
      if (slope > 0) [low, lowSlope] = [length, slope];
      else [high, highSlope] = [length, slope];
      if (high === Infinity) length *= 4;
      else length = low + (high - low) * Math.min(Math.max(lowSlope / (lowSlope - highSlope), 0.1), 0.9);
    }
    lambda.set(tried);
    [gradient, triedGradient] = [triedGradient, gradient];
    [hessian, triedHessian] = [triedHessian, hessian];
    return newValue;
  }

  return solver;
}
