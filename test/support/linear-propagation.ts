/** The law of propagation of uncertainty for independent inputs, by numerical derivatives. */
import type { Model } from './propagate';

export interface InputEstimate {
  estimate: number;
  /** Standard uncertainty. */
  u: number;
  /** Degrees of freedom of the uncertainty; none where it is known for certain. */
  dof?: number;
}

export interface LinearPropagation {
  estimate: number;
  /** Combined standard uncertainty to the first order. */
  u: number;
  /** With the terms of the next higher order. */
  uSecondOrder: number;
  /** Effective degrees of freedom of `u`. */
  dof: number;
}

/** Step of the derivatives in standard uncertainties: small to the model's bends, large to its rounding. */
const STEP = 0.1;

/**
 * Source: JCGM 100:2008, equation (10), the note to 5.1.2 for the higher terms, and the Welch–Satterthwaite formula
 * (G.2b).
 */
export function propagateLinearly(model: Model, inputs: readonly InputEstimate[]): LinearPropagation {
  const middle = Float64Array.from(inputs, ({ estimate }) => estimate);
  /** The model with some inputs moved by whole steps. */
  const at = (...moves: [input: number, steps: number][]): number => {
    const x = middle.slice();
    for (const [input, steps] of moves) x[input]! += steps * STEP * inputs[input]!.u;
    return model(x);
  };
  // Derivatives times the uncertainties they go with.
  const slope = inputs.map((_, i) => (at([i, 1]) - at([i, -1])) / (2 * STEP));
  const variance = slope.reduce((sum, c) => sum + c * c, 0);
  let higher = 0;
  inputs.forEach((_, i) => {
    inputs.forEach((_, j) => {
      higher += 0.5 * mixed(i, j) ** 2 + slope[i]! * slopeOfBend(i, j);
    });
  });
  const u = Math.sqrt(variance);
  const shares = inputs.reduce((sum, { dof }, i) => sum + (dof === undefined ? 0 : slope[i]! ** 4 / dof), 0);
  return { estimate: model(middle), u, uSecondOrder: Math.sqrt(variance + higher), dof: u ** 4 / shares };

  function mixed(i: number, j: number): number {
    if (i === j) return (at([i, 1]) - 2 * at() + at([i, -1])) / STEP ** 2;
    return (at([i, 1], [j, 1]) - at([i, 1], [j, -1]) - at([i, -1], [j, 1]) + at([i, -1], [j, -1])) / (4 * STEP ** 2);
  }

  /** ∂³f/∂xᵢ∂xⱼ² times u(xᵢ)·u²(xⱼ). */
  function slopeOfBend(i: number, j: number): number {
    if (i === j) return (at([i, 2]) - 2 * at([i, 1]) + 2 * at([i, -1]) - at([i, -2])) / (2 * STEP ** 3);
    const bend = (side: number) => at([i, side], [j, 1]) - 2 * at([i, side]) + at([i, side], [j, -1]);
    return (bend(1) - bend(-1)) / (2 * STEP ** 3);
  }
}
