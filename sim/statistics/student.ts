import { incompleteBeta } from './incomplete-beta';
import { normalQuantile } from './normal-distribution';

/**
 * The quantile of probability p of Student's t with `dof` degrees of freedom (above 0, need not be whole; Infinity is
 * the normal distribution).
 *
 * @throws RangeError if p is not between 0 and 1 or dof not above 0
 */
export function studentQuantile(p: number, dof: number): number {
  requireDistribution(p, dof);
  if (dof === Infinity || p === 0 || p === 1 || p === 0.5) return normalQuantile(p);
  const tail = Math.min(p, 1 - p);
  const size = firstAtOrAbove((t) => studentTail(t, dof) <= tail);
  return p < 0.5 ? -size : size;
}

/**
 * Chance that Student's t exceeds t ≥ 0.
 *
 * Source: M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions", 26.7.1 with 26.5.27.
 */
function studentTail(t: number, dof: number): number {
  const square = t * t;
  return 0.5 * incompleteBeta(dof / (dof + square), dof / 2, 0.5, square / (dof + square));
}

/** The smallest x above 0, to the last few bits, where `reached` turns true for good: doubling, then halving. */
function firstAtOrAbove(reached: (x: number) => boolean): number {
  let high = 1;
  while (high < Infinity && !reached(high)) high *= 2;
  while (high > Number.MIN_VALUE && reached(high / 2)) high /= 2;
  let low = high / 2;
  for (let i = 0; i < 53; i++) {
    const middle = low + (high - low) / 2;
    if (reached(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function requireDistribution(p: number, dof: number): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`Probability ${p} is not between 0 and 1. Give one in that range.`);
  if (!(dof > 0)) throw new RangeError(`Degrees of freedom ${dof} are not above 0. Give a number above 0.`);
}
