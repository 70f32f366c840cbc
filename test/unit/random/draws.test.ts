import { describe, expect, test } from 'vitest';
import { below, exponential, skip } from '../../../sim/random/draws';
import { stream } from '../../../sim/random/streams';
import { Generator } from '../../../sim/random/xoshiro';
import { incompleteGamma } from '../../../sim/statistics/incomplete-gamma';
import { kolmogorovDistance, kolmogorovLimit } from '../../support/kolmogorov';

describe('exponential numbers', () => {
  test('follow 1 − exp(−x/mean)', () => {
    const generator = stream(0, 'exponential', 0);
    const sample = Float64Array.from({ length: 200_000 }, () => exponential(generator, 0.25));
    expect(kolmogorovDistance(sample, (x) => -Math.expm1(-x / 0.25))).toBeLessThan(kolmogorovLimit(sample.length));
  });

  test('are 0 for a mean of 0', () => {
    expect(Math.abs(exponential(stream(0, 'exponential', 1), 0))).toBe(0);
  });
});

describe('failures before the next success', () => {
  test.each([0.9, 0.3, 0.002])('number (1 − c)/c on average for a chance of %d', (chance) => {
    const n = 200_000;
    const generator = stream(1, 'skip', 0);
    let sum = 0;
    let none = 0;
    for (let i = 0; i < n; i++) {
      const failures = skip(generator, chance);
      sum += failures;
      if (failures === 0) none++;
    }
    // Four standard errors: one false alarm in 16,000 each.
    expect(Math.abs(sum / n - (1 - chance) / chance)).toBeLessThan((4 * Math.sqrt((1 - chance) / n)) / chance);
    expect(Math.abs(none / n - chance)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / n));
  });

  test('never come to an end for chance 0, and are none for chance 1', () => {
    const generator = stream(2, 'skip', 0);
    for (let i = 0; i < 100; i++) {
      expect(skip(generator, 0)).toBe(Infinity);
      expect(skip(generator, 1)).toBe(0);
    }
  });

  test.each([-0.1, 1.1, Number.NaN])('a chance of %d is refused', (chance) => {
    expect(() => skip(stream(0, 'skip', 0), chance)).toThrow(`Chance ${chance} is not between 0 and 1.`);
  });
});

describe('small whole numbers', () => {
  test.each([1, 2, 7, 12])('below %d are equally likely', (n) => {
    const draws = 120_000;
    const counts = new Float64Array(n);
    const generator = stream(3, 'below', n);
    for (let i = 0; i < draws; i++) counts[below(generator, n)]!++;
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(draws);
    const square = counts.reduce((sum, count) => sum + (count - draws / n) ** 2 / (draws / n), 0);
    if (n === 1) expect(square).toBe(0);
    // the chance of so large a χ²: one false alarm in a thousand
    else expect(incompleteGamma((n - 1) / 2, square / 2).upper).toBeGreaterThan(0.001);
  });

  test('draw again in the incomplete last run of words', () => {
    // 3 · 2³⁰ leaves a last run of 2³⁰ words, a quarter of all: taking remainders there would make small ones likelier.
    const n = 3 * 2 ** 30;
    const generator = stream(4, 'below', 0);
    const plain = new Generator([...generator.state]);
    let drawnAgain = 0;
    for (let i = 0; i < 1000; i++) {
      let word = plain.nextUint32();
      while (word >= n) {
        drawnAgain++;
        word = plain.nextUint32();
      }
      expect(below(generator, n)).toBe(word);
    }
    expect(drawnAgain).toBeGreaterThan(200);
  });

  test.each([0, -3, 2.5, 2 ** 33])('a count of %d is refused', (n) => {
    expect(() => below(stream(0, 'below', 0), n)).toThrow(`Count ${n} is not a whole number from 1 to 4294967296.`);
  });
});
