import type { Generator } from './xoshiro';

/**
 * An exponential number with the given mean (0 or above, any unit).
 *
 * Source: inversion, −mean·ln(u).
 */
export function exponential(generator: Generator, mean: number): number {
  return -mean * Math.log(generator.uniform());
}

/**
 * How many trials fail before the next success, each succeeding with `chance`: one draw then stands for the whole run
 * of failures, which is what makes rare events cheap. Chance 0 gives Infinity, chance 1 gives 0.
 *
 * @throws RangeError if the chance is not between 0 and 1
 *
 * Source: geometric distribution by inversion, L. Devroye, "Non-Uniform Random Variate Generation" (1986), X.2.
 */
export function skip(generator: Generator, chance: number): number {
  if (!(chance >= 0 && chance <= 1)) {
    throw new RangeError(`Chance ${chance} is not between 0 and 1. Give a chance in that range.`);
  }
  return Math.floor(Math.log(generator.uniform()) / Math.log1p(-chance));
}

/**
 * A whole number from 0 to n − 1, all equally likely.
 *
 * @throws RangeError if n is not a whole number from 1 to 2³²
 */
export function below(generator: Generator, n: number): number {
  if (!Number.isInteger(n) || n < 1 || n > 2 ** 32) {
    throw new RangeError(`Count ${n} is not a whole number from 1 to 4294967296. Give such a number.`);
  }
  // Words from the last, incomplete run of n would make small numbers likelier: draw again.
  const limit = 2 ** 32 - (2 ** 32 % n);
  while (true) {
    const word = generator.nextUint32();
    if (word < limit) return word % n;
  }
}
