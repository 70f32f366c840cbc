/**
 * The additive model of JCGM 101:2008 (propagation of distributions by a Monte Carlo method), 9.2, through the engine's
 * own random streams, block loop, stop rule and quantiles. Exact ends of the interval are derived by convolution; the
 * standard prints them to three digits.
 */
import { describe, expect, test } from 'vitest';
import { fillNormals, fillUniforms } from '../../sim/random/normal';
import { stream } from '../../sim/random/streams';
import { atOnce, BLOCK_TRIALS, blockLoop, finish } from '../../sim/run/block-loop';
import { Moments } from '../../sim/statistics/moments';
import { quantile, quantileInterval, selectQuantile, sortedCopy } from '../../sim/statistics/quantiles';
import { settling } from '../../sim/statistics/settle';

type Input = { shape: 'normal' | 'rectangular'; sd: number };

interface Model {
  inputs: Input[];
  sd: number;
  /** Half-width of the 95 % coverage interval: exact, and as the standard prints it. */
  exact: number;
  printed: string;
}

const four = (shape: Input['shape']): Input[] => Array.from({ length: 4 }, () => ({ shape, sd: 1 }));

const MODELS: Record<string, Model> = {
  // published: 9.2.2, table 2; exact: 2 · 1.959 963 985
  'four normal inputs (9.2.2)': { inputs: four('normal'), sd: 2, exact: 3.919927969, printed: '3.92' },
  // published: 9.2.3, table 3; exact: 2√3·[2 − (3/5)^¼]
  'four rectangular inputs (9.2.3)': { inputs: four('rectangular'), sd: 2, exact: 3.879406741, printed: '3.88' },
  // from memory: 9.2.4, table 4; exact by convolution
  'three rectangular inputs and one ten times as wide (9.2.4)': {
    inputs: [...four('rectangular').slice(1), { shape: 'rectangular', sd: 10 }],
    sd: Math.sqrt(103),
    exact: 17.0158141,
    printed: '17.0',
  },
};

/** One block of the model's output: each input has a stream of its own. */
function outputs(inputs: readonly Input[], block: number, trials: number): Float64Array {
  const sum = new Float64Array(trials);
  const draws = new Float64Array(trials);
  inputs.forEach(({ shape, sd }, i) => {
    const generator = stream(3, `input ${i}`, block);
    if (shape === 'normal') fillNormals(generator, draws);
    else fillUniforms(generator, draws);
    for (let k = 0; k < trials; k++) {
      sum[k]! += sd * (shape === 'normal' ? draws[k]! : Math.sqrt(12) * (draws[k]! - 0.5));
    }
  });
  return sum;
}

/** Runs until both ends of the interval are settled to within ± `halfWidth` at 95 %. */
function settledRun({ inputs }: Model, halfWidth: number, trials: number) {
  const ends: [low: number[], high: number[]] = [[], []];
  return finish(
    blockLoop({
      trials,
      run: atOnce((block: number, count: number) => outputs(inputs, block, count)),
      settled: (block: Float64Array) => {
        ends[0].push(selectQuantile(block, 0.025));
        ends[1].push(selectQuantile(block, 0.975));
        return ends.every((figures) => settling(figures, halfWidth).settled);
      },
    }),
  );
}

function joined(blocks: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    all.set(block, at);
    at += block.length;
  }
  return all;
}

describe.each(Object.entries(MODELS))('the sum of %s', (_, model) => {
  const tolerance = 0.005 * model.sd;
  const { blocks, stopReason } = settledRun(model, tolerance, 4_000_000);
  const sample = joined(blocks);
  const sorted = sortedCopy(sample);

  test('settles before it runs out of trials', () => {
    expect(stopReason).toBe('settled');
    expect(sample.length).toBeGreaterThanOrEqual(10 * BLOCK_TRIALS);
    expect(sample.length).toBeLessThan(4_000_000);
  });

  test('has the exact mean and standard uncertainty, within four standard errors (1 in 16,000 seeds)', () => {
    const moments = new Moments().add(sample);
    expect(Math.abs(moments.mean)).toBeLessThan((4 * model.sd) / Math.sqrt(sample.length));
    // the normal has the heaviest tails of the three: SE(sd) is at most sd/√(2M)
    expect(Math.abs(moments.sd - model.sd)).toBeLessThan((4 * model.sd) / Math.sqrt(2 * sample.length));
  });

  test('ends its 95 % interval where the standard does, within the tolerance it settled to', () => {
    const [low, high] = [quantile(sorted, 0.025), quantile(sorted, 0.975)];
    // the tolerance is kept in 95 % of runs at either end; twice the tolerance in all but 1 in 700 (Student's t, ν = 9)
    expect(Math.abs(high - model.exact)).toBeLessThan(2 * tolerance);
    expect(Math.abs(low + model.exact)).toBeLessThan(2 * tolerance);
    expect(Math.abs(model.exact - Number(model.printed))).toBeLessThan(model.printed === '17.0' ? 0.05 : 0.005);
  });

  test('has the exact end within the interval it states for it', () => {
    const { low, high } = quantileInterval(sorted, 0.975, 0.9999);
    expect(low).toBeLessThan(model.exact);
    expect(high).toBeGreaterThan(model.exact);
    expect(high - low).toBeLessThan(8 * tolerance);
  });
});

describe('the check on the intervals', () => {
  test('tells four rectangular inputs from four normal ones', () => {
    const normal = MODELS['four normal inputs (9.2.2)']!;
    const rectangular = MODELS['four rectangular inputs (9.2.3)']!;
    expect(normal.exact - rectangular.exact).toBeGreaterThan(2 * 0.005 * 2);
  });
});
