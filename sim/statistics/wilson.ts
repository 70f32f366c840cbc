import type { Share } from './estimates';
import { normalQuantile } from './normal-distribution';

/**
 * A share of trials with its two-sided score interval. No trials: the share is 0 and the interval says nothing, 0 to 1.
 *
 * @param successes whole number 0 to `trials`
 * @param level confidence level, above 0 and below 1
 * @throws RangeError if successes are not between 0 and trials, or the level not between 0 and 1
 *
 * Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", J. Amer. Statist. Assoc.
 * 22 (1927) 209–212.
 */
export function wilson(successes: number, trials: number, level = 0.95): Share {
  if (!(successes >= 0 && successes <= trials)) {
    throw new RangeError(`${successes} successes in ${trials} trials cannot be. Give from 0 to ${trials} successes.`);
  }
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`Confidence level ${level} is not between 0 and 1. Give one such as 0.95.`);
  }
  if (trials === 0) return { value: 0, low: 0, high: 1 };
  const z = normalQuantile((1 + level) / 2);
  const value = successes / trials;
  const shrink = 1 + (z * z) / trials;
  const centre = (value + (z * z) / (2 * trials)) / shrink;
  const half = (z / shrink) * Math.sqrt((value * (1 - value)) / trials + (z / (2 * trials)) ** 2);
  return {
    value,
    low: successes === 0 ? 0 : Math.max(0, centre - half),
    high: successes === trials ? 1 : Math.min(1, centre + half),
  };
}
