import { logGamma, stirlingCorrection } from './incomplete-gamma';

const TINY = 1e-300;
const MOST_STEPS = 1_000_000;

/**
 * The regularised incomplete beta function I_x(a, b), a, b > 0, 0 ≤ x ≤ 1. The complement 1 − x may be given by itself
 * where the caller knows it more exactly than the subtraction would.
 *
 * Source: NIST Digital Library of Mathematical Functions, 8.17.4 and 8.17.22 (continued fraction, by Lentz).
 */
export function incompleteBeta(x: number, a: number, b: number, complement = 1 - x): number {
  if (Number.isNaN(x)) return x;
  if (x <= 0) return 0;
  if (complement <= 0) return 1;
  const front = Math.exp(logBetaFront(x, complement, a, b));
  // The fraction converges fast on the near side of the mean only.
  if (x < (a + 1) / (a + b + 2)) return (front * betaFraction(x, a, b)) / a;
  return 1 - (front * betaFraction(complement, b, a)) / b;
}

/** Chance of at most `k` successes in `trials`, each with chance p. Source: DLMF 8.17.5. */
export function binomialAtMost(k: number, trials: number, p: number): number {
  if (k < 0) return 0;
  if (k >= trials) return 1;
  return incompleteBeta(1 - p, trials - k, k + 1, p);
}

/** ln[x^a (1 − x)^b / B(a, b)]. Logarithms of large gammas would cancel, so Stirling's series takes them together. */
function logBetaFront(x: number, complement: number, a: number, b: number): number {
  if (a > b) return logBetaFront(complement, x, b, a);
  const total = a + b;
  if (a >= 10) {
    const towardA = (x * b - complement * a) / a;
    const towardB = (complement * a - x * b) / b;
    const correction = stirlingCorrection(total) - stirlingCorrection(a) - stirlingCorrection(b);
    const scale = 0.5 * Math.log((a / total) * (b / (2 * Math.PI)));
    return a * Math.log1p(towardA) + b * Math.log1p(towardB) + scale + correction;
  }
  const logX = x < 0.5 ? Math.log(x) : Math.log1p(-complement);
  const logComplement = x < 0.5 ? Math.log1p(-x) : Math.log(complement);
  if (b < 10) return a * logX + b * logComplement + logGamma(total) - logGamma(a) - logGamma(b);
  const gammas = a * Math.log(total) - a + (b - 0.5) * Math.log1p(a / b);
  const correction = stirlingCorrection(total) - stirlingCorrection(b) - logGamma(a);
  return a * logX + b * logComplement + gammas + correction;
}

function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m < MOST_STEPS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    const change = d * c;
    fraction *= change;
    if (Math.abs(change - 1) < 3e-16) break;
  }
  return fraction;
}

function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
