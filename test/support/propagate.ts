/** Any model with any inputs through the block loop, the random streams and the statistics that rings go through. */
import { stream } from '../../sim/random/streams';
import { atOnce, blockLoop, finish } from '../../sim/run/block-loop';
import type { StopReason } from '../../sim/run/prediction';
import { Moments } from '../../sim/statistics/moments';
import { quantile, quantileInterval, selectQuantile } from '../../sim/statistics/quantiles';
import { settling } from '../../sim/statistics/settle';
import type { Input } from './input-kinds';

/** A quantity as a function of its inputs, in the order in which these are given. */
export type Model = (inputs: Float64Array) => number;
export type Inputs = Readonly<Record<string, Input>>;

export interface Propagation {
  trials: number;
  seed: number;
  /** Takes the blocks in order; true once the answer is settled. */
  settled?: (block: Float64Array) => boolean;
}

export interface Propagated {
  /** Ascending. */
  sorted: Float64Array;
  moments: Moments;
  /** Fourth moment about the mean over the square of the variance. */
  kurtosis: number;
  stopReason: StopReason;
}

export function propagate(model: Model, inputs: Inputs, { trials, seed, settled }: Propagation): Propagated {
  const named = Object.entries(inputs);
  const run = atOnce((block: number, count: number): Float64Array => {
    const columns = named.map(([name, input]) => {
      const column = new Float64Array(count);
      input.fill(stream(seed, name, block), column);
      return column;
    });
    const x = new Float64Array(columns.length);
    const y = new Float64Array(count);
    for (let trial = 0; trial < count; trial++) {
      for (let k = 0; k < columns.length; k++) x[k] = columns[k]![trial]!;
      y[trial] = model(x);
    }
    return y;
  });
  const { blocks, stopReason } = finish(blockLoop({ trials, run, ...(settled && { settled }) }));
  const moments = new Moments();
  for (const block of blocks) moments.add(block);
  const sorted = new Float64Array(moments.count);
  let at = 0;
  for (const block of blocks) {
    sorted.set(block, at);
    at += block.length;
  }
  sorted.sort();
  let fourth = 0;
  for (const y of sorted) {
    const square = (y - moments.mean) * (y - moments.mean);
    fourth += square * square;
  }
  return { sorted, moments, kurtosis: fourth / sorted.length / moments.variance ** 2, stopReason };
}

/** Four standard errors: one false alarm in 16,000. */
export const SURE = 4;
const SURE_LEVEL = 1 - 6.3342e-5;

/** How far the mean may stand from the truth. */
export const meanLimit = ({ moments }: Propagated): number => SURE * moments.standardError;

/** How far the standard deviation may: σ·√((κ − 1)/(4M)) is its standard error. */
export const sdLimit = ({ moments, kurtosis }: Propagated): number =>
  SURE * moments.sd * Math.sqrt((kurtosis - 1) / (4 * moments.count));

/** Between which values the true quantile of probability p lies, with the same certainty. */
export const quantileBounds = ({ sorted }: Propagated, p: number): [low: number, high: number] => {
  const { low, high } = quantileInterval(sorted, p, SURE_LEVEL);
  return [low, high];
};

/** The interval of this probability that leaves equal chances on either side. */
export const symmetricInterval = ({ sorted }: Propagated, probability: number): [low: number, high: number] => [
  quantile(sorted, (1 - probability) / 2),
  quantile(sorted, (1 + probability) / 2),
];

/** The shortest of all intervals of this probability. Source: JCGM 101:2008, 7.7.4. */
export function shortestInterval({ sorted }: Propagated, probability: number): [low: number, high: number] {
  const reach = Math.floor(probability * sorted.length + 0.5);
  let best = 0;
  for (let r = 1; r + reach < sorted.length; r++) {
    if (sorted[r + reach]! - sorted[r]! < sorted[best + reach]! - sorted[best]!) best = r;
  }
  return [sorted[best]!, sorted[best + reach]!];
}

/** Estimate, uncertainty, and both ends of the interval, block by block. */
export type FourFigures = [number[], number[], number[], number[]];

/**
 * The two-stage rule on estimate, uncertainty and both ends of a symmetric coverage interval, as a run asks it.
 *
 * @param tolerance all four are to be known to, in the unit of the model
 * @param figures filled with the four of every block
 */
export function twoStageRule(
  tolerance: number,
  coverage: number,
  figures: FourFigures = [[], [], [], []],
): (block: Float64Array) => boolean {
  const tail = (1 - coverage) / 2;
  return (block) => {
    const { mean, sd } = new Moments().add(block);
    const ofBlock = [mean, sd, selectQuantile(block, tail), selectQuantile(block, 1 - tail)];
    ofBlock.forEach((figure, k) => {
      figures[k]!.push(figure);
    });
    return figures.every((blocks) => settling(blocks, tolerance).settled);
  };
}
