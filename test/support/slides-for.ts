import type { JointGive } from '../../sim/closure/joint-give';

/** Least-cost slides (ω, τe, τo) of one joint for the closure multipliers λ: −columnᵀλ / weight. */
export function slidesFor(give: JointGive, joint: number, lambda: Float64Array): [number, number, number] {
  const slide = (k: number): number => {
    let sum = 0;
    for (let i = 0; i < 6; i++) sum += give.maps.slideColumns[joint * 18 + k * 6 + i]! * lambda[i]!;
    return -sum / give.slideWeights[k]!;
  };
  return [slide(0), slide(1), slide(2)];
}
