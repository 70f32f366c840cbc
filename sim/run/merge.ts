/** Blocks, in order, to one method's result. */

import { pitchMm, RADIANS_PER_DEGREE, stripNeededMm } from '../geometry/ring';
import { Moments } from '../statistics/moments';
import { selectQuantile, sortedCopy } from '../statistics/quantiles';
import { gapSummary, spreadSummary } from '../statistics/summaries';
import { wilson } from '../statistics/wilson';
import { finish } from './block-loop';
import type { BlockResult } from './block-result';
import type { PieceCost } from './cost';
import { GOOD, REWORK } from './grade';
import { jointP95Mm } from './joint-gaps';
import type { MethodPlan } from './plan';
import type { MethodResult, StopReason } from './prediction';

type ArrayOf =
  | 'mouthMm'
  | 'showGapMm'
  | 'hiddenGapMm'
  | 'clearOpeningMm'
  | 'outOfRoundMm'
  | 'stepMm'
  | 'truingMm'
  | 'tiltRad';

function joined(blocks: readonly BlockResult[], key: ArrayOf): Float64Array {
  const all = new Float64Array(blocks.reduce((sum, block) => sum + block[key].length, 0));
  let at = 0;
  for (const block of blocks) {
    all.set(block[key], at);
    at += block[key].length;
  }
  return all;
}

// Loops by index from here on: these run over every ring, and iterators cost more than the counting.

/**
 * Ascending show gaps of the rings that pass everything but the show limit.
 *
 * @param all the show gaps of all rings, ascending
 */
function otherwiseGoodGaps(blocks: readonly BlockResult[], all: Float64Array): Float64Array {
  const gaps = new Float64Array(all.length);
  let count = 0;
  for (const { rings, otherwiseGood, showGapMm } of blocks) {
    for (let k = 0; k < rings; k++) if (otherwiseGood[k] === 1) gaps[count++] = showGapMm[k]!;
  }
  return count === all.length ? all : gaps.slice(0, count).sort();
}

function countWhere(blocks: readonly BlockResult[], key: 'grade' | 'closes' | 'insertFits', value: number): number {
  let count = 0;
  for (const block of blocks) {
    const entries = block[key];
    for (let k = 0; k < entries.length; k++) if (entries[k] === value) count++;
  }
  return count;
}

function goodRings(blocks: readonly BlockResult[], trials: number): Uint8Array {
  const good = new Uint8Array(trials);
  let at = 0;
  for (const { rings, grade } of blocks) for (let k = 0; k < rings; k++) good[at++] = grade[k] === GOOD ? 1 : 0;
  return good;
}

function marks(blocks: readonly BlockResult[], key: 'closes' | 'insertFits', trials: number): Uint8Array {
  const all = new Uint8Array(trials);
  let at = 0;
  for (const block of blocks) {
    all.set(block[key], at);
    at += block.rings;
  }
  return all;
}

/** The values of the rings that close, in their order. */
function ofClosing(values: Float64Array, closes: Uint8Array): Float64Array {
  return closes.includes(0) ? values.filter((_, ring) => closes[ring] === 1) : values;
}

/** Mean and standard deviation of the shared tilt error left after test cuts, degrees. */
function tiltAfterTest(plan: MethodPlan, blocks: readonly BlockResult[]): { mean: number; sd: number } {
  if (!plan.test) {
    const { tilt } = plan.method;
    const sd = tilt.shape === 'uniform' ? tilt.sharedDeg / Math.sqrt(3) : tilt.sharedDeg;
    return { mean: tilt.biasDeg, sd: tilt.reset === 'everyCut' ? 0 : sd };
  }
  const moments = new Moments().add(joined(blocks, 'tiltRad'));
  return { mean: moments.mean / RADIANS_PER_DEGREE, sd: moments.sd / RADIANS_PER_DEGREE };
}

/** `mergeSteps` in one go. */
export function mergeBlocks(...blocksAndCost: Parameters<typeof mergeSteps>): MethodResult {
  return finish(mergeSteps(...blocksAndCost));
}

/**
 * Blocks must be whole, in order and at least one. Yields between the figures that take long to sum up, so that the
 * driver can listen.
 */
export function* mergeSteps(
  plan: MethodPlan,
  blocks: readonly BlockResult[],
  stopReason: StopReason,
  cost: PieceCost,
): Generator<void, MethodResult, void> {
  const { method, project, geometry, maps } = plan;
  const trials = blocks.reduce((sum, block) => sum + block.rings, 0);
  if (trials === 0) throw new Error('The run was stopped before its first block of rings was done.');
  const share = (key: 'grade' | 'closes' | 'insertFits', value: number) =>
    wilson(countWhere(blocks, key, value), trials);

  const showGapMm = joined(blocks, 'showGapMm');
  const hiddenGapMm = joined(blocks, 'hiddenGapMm');
  const mouthMm = joined(blocks, 'mouthMm');
  const stepMm = joined(blocks, 'stepMm');
  const closes = marks(blocks, 'closes', trials);
  const good = goodRings(blocks, trials);
  // A ring that will not close has no size: it takes no part in the mean, and in percentiles it lies beyond all others.
  const sizes = (values: Float64Array, beyond: number) => {
    const moments = new Moments().add(ofClosing(values, closes));
    return spreadSummary(
      closes.includes(0) ? values.map((mm, ring) => (closes[ring] === 1 ? mm : beyond)) : values,
      moments,
    );
  };
  const ascending = sortedCopy(showGapMm);
  yield;
  const showGap = gapSummary(ascending, new Moments().add(ofClosing(showGapMm, closes)));
  const hiddenGap = gapSummary(hiddenGapMm, new Moments().add(ofClosing(hiddenGapMm, closes)));
  yield;
  const jointShowGapP95Mm = jointP95Mm(blocks, maps.sides);
  yield;
  const mouth = spreadSummary(mouthMm);
  yield;
  const clearOpening = sizes(joined(blocks, 'clearOpeningMm'), Number.NEGATIVE_INFINITY);
  yield;
  const outOfRound = sizes(joined(blocks, 'outOfRoundMm'), Number.POSITIVE_INFINITY);
  yield;
  const step = sizes(stepMm, Number.POSITIVE_INFINITY);
  yield;
  const otherwiseGoodShowGapMm = otherwiseGoodGaps(blocks, ascending);
  const goodCount = countWhere(blocks, 'grade', GOOD);
  const rework = countWhere(blocks, 'grade', REWORK);
  const truing = joined(blocks, 'truingMm');
  return {
    prediction: {
      name: method.name,
      trials,
      rule: plan.closer.rule,
      stopReason,
      cuts: plan.cuts.length,
      pitchMm: pitchMm(geometry, method.blade, method.sequence),
      stripNeededMm: stripNeededMm(geometry, method.blade, method.sequence, project.stock),
      tiltSharedAfterTestDeg: tiltAfterTest(plan, blocks),
      mouthMm: mouth.summary,
      showGapMm: showGap.summary,
      hiddenGapMm: hiddenGap.summary,
      jointShowGapP95Mm,
      clearOpeningMm: clearOpening.summary,
      yield: wilson(goodCount, trials),
      insertFits: project.piece.insert ? share('insertFits', 1) : { value: 1, low: 1, high: 1 },
      willNotClose: share('closes', 0),
      cost: cost.summary,
    },
    sample: { showGapMm: ascending, otherwiseGoodShowGapMm },
    byRing: { showGapMm, hiddenGapMm, mouthMm, stepMm, good, closes, insertFits: marks(blocks, 'insertFits', trials) },
    minutesInterval: cost.minutes,
    intervals: {
      hiddenGapMm: hiddenGap.intervals,
      mouthMm: mouth.intervals,
      clearOpeningMm: clearOpening.intervals,
      outOfRoundMm: outOfRound.intervals,
      stepMm: step.intervals,
    },
    setUps: { money: cost.money, pieces: cost.pieces },
    grades: { good: goodCount, rework, scrap: trials - goodCount - rework },
    ...(truing.length > 0 && { truingRemovesMm: selectQuantile(truing, 0.95) }),
    outOfRoundMm: outOfRound.summary,
    stepMm: step.summary,
  };
}
