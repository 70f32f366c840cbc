import { incompleteGamma } from './incomplete-gamma';

// Rational approximations in rising powers, numerator and denominator, for the middle, the flank and the far tail.
const MIDDLE = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
] as const;
const FLANK = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
] as const;
const FAR = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 0.000018463183175100548,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
] as const;

/**
 * The standard normal quantile of probability p, accurate to about 1 part in 10¹⁶; p = 0 gives −Infinity, 1 Infinity.
 *
 * @throws RangeError if p is not between 0 and 1
 *
 * Source: M. J. Wichura, "Algorithm AS 241: The percentage points of the normal distribution", Appl. Statist. 37 (1988)
 * 477–484, PPND16.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`Probability ${p} is not between 0 and 1. Give one in that range.`);
  const fromMiddle = p - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) return fromMiddle * ratio(MIDDLE, 0.180625 - fromMiddle * fromMiddle);
  const tail = fromMiddle < 0 ? p : 1 - p;
  if (tail === 0) return fromMiddle < 0 ? -Infinity : Infinity;
  const root = Math.sqrt(-Math.log(tail));
  const size = root <= 5 ? ratio(FLANK, root - 1.6) : ratio(FAR, root - 5);
  return fromMiddle < 0 ? -size : size;
}

/**
 * Chance that a standard normal number is at most x, without loss in the lower tail.
 *
 * Source: NIST Digital Library of Mathematical Functions, 7.11.1–7.11.2: Φ(−x) = ½ Q(½, x²/2).
 */
export function normalCdf(x: number): number {
  const { lower, upper } = incompleteGamma(0.5, 0.5 * x * x);
  return x < 0 ? 0.5 * upper : 0.5 + 0.5 * lower;
}

function ratio([above, under]: readonly [readonly number[], readonly number[]], r: number): number {
  return polynomial(above, r) / polynomial(under, r);
}

function polynomial(coefficients: readonly number[], r: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * r + coefficients[i]!;
  return value;
}

/** The 97.5 % quantile, rounded to the nearest double: `normalQuantile(0.975)` misses its last two bits. */
export const NORMAL_975 = 1.959963984540054;
