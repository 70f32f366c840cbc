/** Gamma functions that the distributions stand on. Full double precision is about 1e-14 relative here. */

// C. Lanczos' approximation with the coefficients of P. Godfrey, g = 607/128, 15 terms.
const LANCZOS_G = 607 / 128;
const LANCZOS = [
  0.9999999999999971, 57.15623566586292, -59.59796035547549, 14.136097974741746, -0.4919138160976202,
  0.00003399464998481189, 0.00004652362892704858, -0.00009837447530487956, 0.0001580887032249125,
  -0.00021026444172410488, 0.00021743961811521265, -0.0001643181065367639, 0.00008441822398385275,
  -0.000026190838401581408, 0.0000036899182659531625,
];

const TINY = 1e-300;
const MOST_STEPS = 1_000_000;

/** ln Γ(a) for a > 0. Source: Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86–96. */
export function logGamma(a: number): number {
  let sum = LANCZOS[0]!;
  for (let i = 1; i < LANCZOS.length; i++) sum += LANCZOS[i]! / (a + i);
  const base = a + LANCZOS_G + 0.5;
  return (a + 0.5) * Math.log(base) - base + Math.log((Math.sqrt(2 * Math.PI) * sum) / a);
}

/** ln Γ(a) less Stirling's leading terms, for a ≥ 10. Source: DLMF 5.11.1. */
export function stirlingCorrection(a: number): number {
  const inverse = 1 / (a * a);
  return (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse * (1 / 1680 - inverse / 1188)))) / a;
}

/** ln[x^a e^(−x) / Γ(a)], the factor in front of both expansions of the incomplete gamma functions. */
function logFront(a: number, x: number): number {
  if (a < 20) return a * Math.log(x) - x - logGamma(a);
  // Large terms would cancel: put x = a(1 + d) and use Stirling's series for ln Γ(a).
  const d = (x - a) / a;
  const deviance = Math.abs(d) < 0.5 ? Math.log1p(d) - d : Math.log(x / a) - d;
  return a * deviance + 0.5 * Math.log(a / (2 * Math.PI)) - stirlingCorrection(a);
}

/**
 * The regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 − P, both without loss of small values.
 * a > 0, x ≥ 0.
 *
 * Source: NIST Digital Library of Mathematical Functions, 8.11.4 (series) and 8.9.2 (continued fraction, by Lentz).
 */
export function incompleteGamma(a: number, x: number): { lower: number; upper: number } {
  if (Number.isNaN(x)) return { lower: x, upper: x };
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const front = Math.exp(logFront(a, x));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; term > sum * 1e-17; n++) {
      term *= x / (a + n);
      sum += term;
    }
    const lower = front * sum;
    return { lower, upper: 1 - lower };
  }
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < MOST_STEPS; n++) {
    const an = n * (a - n);
    b += 2;
    d = 1 / nonZero(an * d + b);
    c = nonZero(b + an / c);
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 3e-16) break;
  }
  const upper = front * fraction;
  return { lower: 1 - upper, upper };
}

function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
