/** Mass calibration in air: JCGM 101:2008, 9.3. Milligrams and kilograms per cubic metre. */
import { describe, expect, test } from 'vitest';
import { settling } from '../../sim/statistics/settle';
import { normal, rectangular } from '../support/input-kinds';
import { propagateLinearly } from '../support/linear-propagation';
import { numericalTolerance } from '../support/numerical-tolerance';
import {
  type FourFigures,
  type Inputs,
  type Model,
  meanLimit,
  propagate,
  quantileBounds,
  sdLimit,
  shortestInterval,
  symmetricInterval,
  twoStageRule,
} from '../support/propagate';

// published: JCGM 101:2008, 9.3.1 and table 5
const NOMINAL_MG = 100_000;
const AIR_REFERENCE = 1.2;
const INPUTS: Inputs = {
  reference: normal(100_000, 0.05),
  added: normal(1.234, 0.02),
  air: rectangular(1.1, 1.3),
  weight: rectangular(7000, 9000),
  standard: rectangular(7950, 8050),
};
const deviation: Model = (x) => (x[0]! + x[1]!) * (1 + (x[2]! - AIR_REFERENCE) * (1 / x[3]! - 1 / x[4]!)) - NOMINAL_MG;

/**
 * derived: quadrature with 160 × 160 × 24 Gauss–Legendre points over the three rectangular inputs and the exact normal
 * distribution of the rest
 */
const EXACT = { mean: 1.234, u: 0.07548, low: 1.084433, high: 1.383567 };

describe('JCGM 101, 9.3: mass calibration', () => {
  const result = propagate(deviation, INPUTS, { trials: 500_000, seed: 93 });

  test('gives the exact estimate, uncertainty and 95 % interval within four standard errors', () => {
    expect(Math.abs(result.moments.mean - EXACT.mean)).toBeLessThan(meanLimit(result));
    expect(Math.abs(result.moments.sd - EXACT.u)).toBeLessThan(sdLimit(result));
    for (const [p, truth] of [
      [0.025, EXACT.low],
      [0.975, EXACT.high],
    ] as const) {
      const [low, high] = quantileBounds(result, p);
      expect(low).toBeLessThan(truth);
      expect(high).toBeGreaterThan(truth);
    }
  });

  // published: JCGM 101:2008, table 6, Monte Carlo row; the interval from memory
  test('gives the published figures: 1.2341 mg, 0.0754 mg, [1.0834, 1.3825] mg', () => {
    expect(Math.abs(result.moments.mean - 1.2341)).toBeLessThan(0.0004);
    expect(Math.abs(result.moments.sd - 0.0754)).toBeLessThan(0.0003);
    const [low, high] = shortestInterval(result, 0.95);
    // Where a shortest interval lies is noisy, how long it is, is not.
    expect(Math.abs(low - 1.0834)).toBeLessThan(0.003);
    expect(Math.abs(high - 1.3825)).toBeLessThan(0.003);
    expect(Math.abs(high - low - 0.2991)).toBeLessThan(0.001);
  });

  test('would be found out one per cent off, or with the densities of air and weight taken as linear', () => {
    expect(0.01 * EXACT.u).toBeGreaterThan(2 * sdLimit(result));
    const [low, high] = quantileBounds(result, 0.975);
    expect(high - low).toBeLessThan(0.01 * (EXACT.high - EXACT.low));
    // published: 0.0539 mg and 0.0750 mg, JCGM 101:2008, table 6, first and higher order
    const linear = propagateLinearly(
      deviation,
      Object.values(INPUTS).map(({ mean, sd }) => ({ estimate: mean, u: sd })),
    );
    expect(linear.u).toBeCloseTo(0.05385, 5);
    expect(linear.uSecondOrder).toBeCloseTo(0.074963, 5);
    for (const u of [linear.u, linear.uSecondOrder]) {
      expect(Math.abs(result.moments.sd - u)).toBeGreaterThan(sdLimit(result));
    }
  });

  test('settles by the two-stage rule where two digits of the uncertainty stand', () => {
    const toleranceMg = numericalTolerance(EXACT.u, 2);
    expect(toleranceMg).toBeCloseTo(0.0005, 15);
    const figures: FourFigures = [[], [], [], []];
    const settled = twoStageRule(toleranceMg, 0.95, figures);
    const trials = 5_000_000;
    const run = propagate(deviation, INPUTS, { trials, seed: 7, settled });
    expect(run.stopReason).toBe('settled');
    expect(run.moments.count).toBeLessThan(trials / 2);
    const [low, high] = symmetricInterval(run, 0.95);
    for (const [figure, truth] of [
      [run.moments.mean, EXACT.mean],
      [run.moments.sd, EXACT.u],
      [low, EXACT.low],
      [high, EXACT.high],
    ] as const) {
      // The tolerance is kept in 95 of 100 runs; twice as much in all but one of 600.
      expect(Math.abs(figure - truth)).toBeLessThan(2 * toleranceMg);
    }
    // The quantiles ask for most; the mean alone would have been settled in a fraction of the blocks.
    expect(settling(figures[0], toleranceMg).blocksWanted).toBeLessThan(figures[0].length / 2);
  });
});
