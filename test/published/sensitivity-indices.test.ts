/**
 * Sensitivity indices of models whose indices are known, from independent samples of the engine's own streams. Each
 * tolerance is five standard errors as the estimate itself states them (1 in 1.7 million seeds), and the stated errors are
 * held to the spread seen over repetitions.
 */
import { describe, expect, test } from 'vitest';
import { type GroupIndices, type IndexEstimate, sobolIndices } from '../../sim/budget/sobol';
import { fillUniforms } from '../../sim/random/normal';
import { stream } from '../../sim/random/streams';
import { Moments } from '../../sim/statistics/moments';
import { normalQuantile } from '../../sim/statistics/normal-distribution';

/** Inputs are uniform on (0, 1); each group names the inputs it holds. */
interface Model {
  inputs: number;
  groups: number[][];
  value(u: Float64Array): number;
}

function indices({ inputs, groups, value }: Model, trials: number, seed: number): GroupIndices[] {
  const sample = (name: string) => {
    const u = new Float64Array(trials * inputs);
    fillUniforms(stream(seed, name, 0), u);
    return u;
  };
  const [A, B] = [sample('A'), sample('B')];
  const evaluate = (fromB: (input: number) => boolean) =>
    Float64Array.from({ length: trials }, (_, k) =>
      value(Float64Array.from({ length: inputs }, (_, i) => (fromB(i) ? B : A)[k * inputs + i]!)),
    );
  return sobolIndices({
    a: evaluate(() => false),
    b: evaluate(() => true),
    mixed: groups.map((group) => evaluate((input) => group.includes(input))),
  });
}

/** Five standard errors, from the interval at 95 %. */
function near({ value, low, high }: IndexEstimate, exact: number): void {
  const error = (high - low) / (2 * 1.959964);
  expect(Math.abs(value - exact), `${value} for ${exact}`).toBeLessThanOrEqual(5 * error + 1e-12);
}

const angle = (u: number) => Math.PI * (2 * u - 1);

// published: Ishigami & Homma 1990, with a = 7 and b = 0.1, used by Saltelli et al., Sensitivity Analysis (2000)
const ISHIGAMI: Model = {
  inputs: 3,
  groups: [[0], [1], [2]],
  value: (u) => {
    const [x, y, z] = [angle(u[0]!), angle(u[1]!), angle(u[2]!)];
    return Math.sin(x) + 7 * Math.sin(y) ** 2 + 0.1 * z ** 4 * Math.sin(x);
  },
};

const G_WEIGHTS = [0, 1, 4.5, 9, 99, 99, 99, 99];
// published: Sobol g-function, Saltelli et al., Computer Physics Communications 181 (2010) 259–270
const G_FUNCTION: Model = {
  inputs: 8,
  groups: G_WEIGHTS.map((_, i) => [i]),
  value: (u) => G_WEIGHTS.reduce((product, a, i) => (product * (Math.abs(4 * u[i]! - 2) + a)) / (1 + a), 1),
};

const NORMAL = (u: number, mean: number, sd: number) => mean + sd * normalQuantile(u);

describe('sensitivity indices', () => {
  test('of the Ishigami function are its own, from 40,000 trials', () => {
    const found = indices(ISHIGAMI, 40_000, 1);
    [0.313905191, 0.442411145, 0].forEach((exact, i) => {
      near(found[i]!.first, exact);
    });
    [0.557588855, 0.442411145, 0.243683664].forEach((exact, i) => {
      near(found[i]!.total, exact);
    });
    expect(found[0]!.total.high - found[0]!.total.low).toBeLessThan(0.04);
  });

  test('of the g-function are its own', () => {
    const found = indices(G_FUNCTION, 40_000, 2);
    [0.716192169, 0.179048042, 0.023675774, 0.007161922, 7.16192e-5].forEach((exact, i) => {
      near(found[i]!.first, exact);
    });
    [0.787144127, 0.242198193, 0.03431691, 0.010460387, 1.04949e-4].forEach((exact, i) => {
      near(found[i]!.total, exact);
    });
  });

  // derived: shares of c²σ²
  test('of a sum are the shares of the variance, first order and total alike, for groups too', () => {
    const sum: Model = {
      inputs: 4,
      groups: [[0], [1], [2, 3]],
      value: (u) => [3, -2, 1, 0.5].reduce((total, c, i) => total + NORMAL(u[i]!, 5, c), 0),
    };
    const variance = 9 + 4 + 1 + 0.25;
    indices(sum, 20_000, 3).forEach(({ first, total }, i) => {
      near(first, [9, 4, 1.25][i]! / variance);
      near(total, [9, 4, 1.25][i]! / variance);
    });
  });

  // derived: X₁ ~ N(1, 0.5²), X₂ ~ N(1, 1): V = 1.5 once V₁ = 0.25, V₂ = 1, V₁₂ = 0.25
  test('of a product leave a sixth to the two together', () => {
    const product: Model = {
      inputs: 2,
      groups: [[0], [1]],
      value: (u) => NORMAL(u[0]!, 1, 0.5) * NORMAL(u[1]!, 1, 1),
    };
    const [one, two] = indices(product, 40_000, 4);
    near(one!.first, 1 / 6);
    near(two!.first, 2 / 3);
    near(one!.total, 1 / 6 + 1 / 6);
    near(two!.total, 2 / 3 + 1 / 6);
  });

  test('of a model that does not vary are nothing', () => {
    const flat = Float64Array.of(2, 2, 2);
    const none = { value: 0, low: 0, high: 0 };
    expect(sobolIndices({ a: flat, b: flat, mixed: [flat] })).toEqual([{ first: none, total: none }]);
  });

  test('state errors of the size they have: over 200 repetitions', () => {
    const runs = Array.from({ length: 200 }, (_, seed) => indices(ISHIGAMI, 1000, seed + 10));
    for (const which of ['first', 'total'] as const) {
      for (const i of [0, 1, 2]) {
        const spread = new Moments().add(runs.map((run) => run[i]![which].value)).sd;
        const stated = new Moments().add(
          runs.map((run) => (run[i]![which].high - run[i]![which].low) / (2 * 1.959964)),
        ).mean;
        // the spread of 200 repetitions is known to 5 %; four of that
        expect(Math.abs(stated / spread - 1), `${which} ${i}: ${stated}, ${spread}`).toBeLessThan(0.2);
      }
    }
  });
});
