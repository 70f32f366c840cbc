import { describe, expect, test } from 'vitest';
import { binomialAtMost, incompleteBeta } from '../../sim/statistics/incomplete-beta';
import { incompleteGamma, logGamma } from '../../sim/statistics/incomplete-gamma';
import { normalCdf, normalQuantile } from '../../sim/statistics/normal-distribution';
import { studentQuantile } from '../../sim/statistics/student';
import { wilson } from '../../sim/statistics/wilson';

const relativeError = (value: number, truth: number): number => Math.abs(value / truth - 1);

describe('normal distribution', () => {
  // published: Wichura, Appl. Statist. 37 (1988) 477–484, test values of AS 241 (the first three);
  // derived: the same function at other common probabilities
  test.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.0902323061678136],
    [1e-20, -9.262340089798409],
    [0.975, 1.9599639845400543],
    [0.9999, 3.7190164854556804],
    [1e-10, -6.361340902404056],
  ])('the quantile of %d is %d', (p, truth) => {
    // 1 − p costs digits for p near 1; hence 1e-13 where the tail is 1e-4 of its storage.
    expect(relativeError(normalQuantile(p), truth)).toBeLessThan(p > 0.5 ? 1e-13 : 5e-16);
  });

  test('the quantile is 0 in the middle, infinite at the ends, and refuses anything else', () => {
    expect([normalQuantile(0.5), normalQuantile(0), normalQuantile(1)]).toEqual([0, -Infinity, Infinity]);
    expect(() => normalQuantile(1.5)).toThrow('Probability 1.5 is not between 0 and 1.');
    expect(() => normalQuantile(Number.NaN)).toThrow(RangeError);
  });

  // published: Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1 (15 decimals of P(x))
  test.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
  ])('the chance of at most %d is %d', (x, truth) => {
    expect(Math.abs(normalCdf(x) - truth)).toBeLessThan(1e-15);
    expect(Math.abs(normalCdf(-x) - (1 - truth))).toBeLessThan(1e-15);
  });

  // derived: 40-digit arithmetic
  test.each([
    [-5, 2.866515718791939e-7],
    [-10, 7.61985302416052e-24],
    [-20, 2.7536241186062337e-89],
  ])('the lower tail at %d keeps its digits', (x, truth) => {
    expect(relativeError(normalCdf(x), truth)).toBeLessThan(1e-13);
  });

  test('the chance undoes the quantile', () => {
    for (const p of [1e-300, 1e-12, 0.01, 0.3, 0.5, 0.9, 0.999]) {
      // the exponent x²/2 magnifies the last bit of x
      expect(relativeError(normalCdf(normalQuantile(p)), p)).toBeLessThan(1e-12);
    }
  });
});

describe("Student's t", () => {
  // published: the t table of any handbook; six decimals
  test.each([
    [1, 12.706205],
    [2, 4.302653],
    [5, 2.570582],
    [10, 2.228139],
    [30, 2.042272],
  ])('0.975 quantile for %d degrees of freedom is %d', (dof, truth) => {
    expect(Math.abs(studentQuantile(0.975, dof) - truth)).toBeLessThan(5.1e-7);
    expect(studentQuantile(0.025, dof)).toBeCloseTo(-studentQuantile(0.975, dof), 10);
  });

  test('agrees with the closed forms for one and two degrees of freedom', () => {
    for (const p of [1e-9, 0.01, 0.3, 0.499, 0.8, 0.999]) {
      expect(relativeError(studentQuantile(p, 1), -1 / Math.tan(Math.PI * p))).toBeLessThan(1e-12);
      const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
      expect(relativeError(studentQuantile(p, 2), two)).toBeLessThan(1e-12);
    }
  });

  // derived: an independent statistics library
  test('takes degrees of freedom that are not whole, and the normal limit', () => {
    expect(studentQuantile(0.975, 16.98)).toBeCloseTo(2.1099839, 4);
    expect(studentQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    expect(studentQuantile(0.975, 1e6)).toBeCloseTo(1.959966356814107, 10);
    expect(studentQuantile(0.5, 3)).toBe(0);
  });

  test('refuses impossible questions', () => {
    expect(() => studentQuantile(0.9, 0)).toThrow('Degrees of freedom 0 are not above 0.');
    expect(() => studentQuantile(-0.1, 5)).toThrow('Probability -0.1 is not between 0 and 1.');
  });
});

describe('χ², by the incomplete gamma function of half the degrees of freedom', () => {
  const chances = (x: number, dof: number) => incompleteGamma(dof / 2, x / 2);

  // published: the χ² table of any handbook; six decimals
  test.each([
    [5, 0.831212, 12.832502],
    [10, 3.246973, 20.483177],
    [30, 16.790772, 46.979242],
  ])('0.025 and 0.975 quantiles for %d degrees of freedom', (dof, low, high) => {
    const last = 5.1e-7;
    expect(chances(low - last, dof).lower).toBeLessThan(0.025);
    expect(chances(low + last, dof).lower).toBeGreaterThan(0.025);
    expect(chances(high - last, dof).upper).toBeGreaterThan(0.025);
    expect(chances(high + last, dof).upper).toBeLessThan(0.025);
  });

  test('agrees with the closed form for two degrees of freedom, in either tail', () => {
    for (const x of [2e-9, 0.2, 1.4, 7, 80]) {
      expect(relativeError(chances(x, 2).lower, -Math.expm1(-x / 2))).toBeLessThan(1e-13);
      expect(relativeError(chances(x, 2).upper, Math.exp(-x / 2))).toBeLessThan(1e-13);
    }
  });

  // derived: the closed form for three degrees of freedom, erf(√(x/2)) − √(2x/π)·e^(−x/2), with erf from the normal distribution
  test('agrees with the closed form for three', () => {
    for (const x of [0.5, 2, 6]) {
      const wanted = 1 - 2 * normalCdf(-Math.sqrt(x)) - Math.sqrt((2 * x) / Math.PI) * Math.exp(-x / 2);
      expect(Math.abs(chances(x, 3).lower - wanted)).toBeLessThan(1e-14);
    }
  });
});

describe('gamma and beta functions', () => {
  test('ln Γ of whole and half numbers', () => {
    expect(logGamma(11)).toBeCloseTo(Math.log(3628800), 13);
    expect(logGamma(0.5)).toBeCloseTo(0.5 * Math.log(Math.PI), 14);
  });

  test('the binomial chance equals the plain sum', () => {
    // derived: Σ C(20, k) 0.3^k 0.7^(20−k), added up term by term
    let term = 0.7 ** 20;
    let sum = 0;
    for (let k = 0; k < 20; k++) {
      sum += term;
      expect(binomialAtMost(k, 20, 0.3)).toBeCloseTo(sum, 13);
      term *= ((20 - k) / (k + 1)) * (0.3 / 0.7);
    }
    expect([binomialAtMost(-1, 20, 0.3), binomialAtMost(20, 20, 0.3)]).toEqual([0, 1]);
  });

  // derived: an independent statistics library
  test('the binomial chance holds for a million trials', () => {
    expect(relativeError(binomialAtMost(999_500, 1_000_000, 0.9995), 0.5059516070372202)).toBeLessThan(1e-13);
  });

  test('the beta function keeps its symmetry and its ends', () => {
    expect(incompleteBeta(0.3, 2.5, 700)).toBeCloseTo(1 - incompleteBeta(0.7, 700, 2.5), 13);
    expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1]);
    expect(incompleteBeta(Number.NaN, 2, 3)).toBeNaN();
    expect(normalCdf(Number.NaN)).toBeNaN();
  });
});

describe('shares', () => {
  // published: Wilson's formula (1927); derived: the figures
  test('3 of 1,000 is 0.001 020 8 to 0.008 783 0', () => {
    const share = wilson(3, 1000);
    expect(share.value).toBe(0.003);
    expect(share.low).toBeCloseTo(0.0010208, 7);
    expect(share.high).toBeCloseTo(0.008783, 7);
  });
});
