/** How much of the show gap's variance each source brings: sensitivity indices by source, on the ring model itself. */

import type { DrawList } from '../errors/draw-list';
import { activeSources } from '../errors/sources';
import { type Project, SOURCE_NAMES, type SourceName } from '../project/document';
import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import { ringGrading } from '../run/block';
import { atOnce, BLOCK_TRIALS, blockLoop } from '../run/block-loop';
import { GOOD } from '../run/grade';
import { openRows } from '../run/joint-rows';
import { type MethodPlan, methodPlan } from '../run/plan';
import type { RunOptions } from '../run/run-method';
import { collapsedStage } from '../run/stages';
import { runTestCuts } from '../testing/test-cuts';
import { type GroupedSample, type GroupIndices, sobolIndices } from './sobol';

export const SENSITIVITY_TRIALS = 8_000;

export interface SourceIndices extends GroupIndices {
  source: SourceName;
}

type Sample = 'A' | 'B';

/** Everything drawn for one block in one sample, kept apart by source. */
interface Drawn {
  shared: Map<SourceName, Float64Array>;
  perPiece: Map<SourceName, Float64Array>;
  bulges: Float64Array;
  snags: Float64Array;
  corners: Float64Array;
}

function onlySource(list: DrawList, source: SourceName): DrawList {
  const own = <Entry extends { source: SourceName | 'aim' }>(entries: Entry[]) =>
    entries.filter((entry) => entry.source === source);
  return { ...list, draws: own(list.draws), offsets: [], rare: own(list.rare) };
}

function drawBlock(
  plan: MethodPlan,
  sources: readonly SourceName[],
  sample: Sample,
  seed: number,
  block: number,
): Drawn {
  const { list, matrix } = plan;
  const outputs = (source: SourceName, stage: 'shared' | 'perCut') => {
    const out = new Float64Array(BLOCK_TRIALS * matrix.width);
    collapsedStage(onlySource(list, source), matrix, [stage]).open(
      seed,
      block,
      `${sample} ${stage} ${source}`,
    )(out, BLOCK_TRIALS);
    return out;
  };
  const rowsOf = (part: DrawList, label: string) => {
    const pour = openRows(part, 'collapsed', seed, block, `${sample} ${label}`, BLOCK_TRIALS);
    pour.pour(BLOCK_TRIALS);
    return pour.rows;
  };
  const corners = new Float64Array(plan.method.assembly.by === 'twoHalves' ? 8 * BLOCK_TRIALS : 0);
  fillNormals(stream(seed, `${sample} truing`, block), corners);
  for (let k = 0; k < corners.length; k++) corners[k]! *= list.truingMm;
  return {
    shared: new Map(sources.map((source) => [source, outputs(source, 'shared')])),
    perPiece: new Map(sources.map((source) => [source, outputs(source, 'perCut')])),
    bulges: rowsOf({ ...list, snag: { ...list.snag, chance: 0 } }, 'bulge'),
    snags: rowsOf({ ...list, bulgeMm: 0 }, 'snags'),
    corners,
  };
}

/** What the indices are about: the worst show gap, or whether the piece is good (1 or 0). */
export type IndexedOutcome = 'showGapMm' | 'good';

export interface SensitivitySampler {
  sources: readonly SourceName[];
  /** The outcome of one block of rings, one mixed array a source. Blocks may be made in any order and anywhere. */
  sample(block: number, rings: number): GroupedSample;
}

/**
 * Known offsets (a bias, a mean force) stay in place: they have no variance. With test cuts the readings' own errors are
 * drawn alike in both samples, so what they bring is the part of the variance that no source accounts for.
 */
export function sensitivitySampler(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
  outcome: IndexedOutcome = 'showGapMm',
): SensitivitySampler {
  const seed = options.seed ?? project.run.seed;
  const plan = methodPlan(project, methodIndex, { ...options, sizes: false });
  const active = activeSources(plan.list);
  const sources = SOURCE_NAMES.filter((name) => active.has(name));
  const { width } = plan.matrix;
  const fixed = { ...plan.list, draws: [], rare: [] };
  const means = new Float64Array(width);
  collapsedStage(fixed, plan.matrix, ['shared']).open(seed, 0, 'means')(means, 1);
  const pieceMeans = new Float64Array(width);
  collapsedStage(fixed, plan.matrix, ['perCut']).open(seed, 0, 'means')(pieceMeans, 1);
  const grading = ringGrading(plan, 1);
  const perRing = 3 * plan.maps.sides;
  const { showGapMm, grade } = grading.result;
  const outcomeNow = outcome === 'good' ? () => (grade[0] === GOOD ? 1 : 0) : () => showGapMm[0]!;

  const sample = (block: number, rings: number): GroupedSample => {
    const drawn = {
      A: drawBlock(plan, sources, 'A', seed, block),
      B: drawBlock(plan, sources, 'B', seed, block),
    };
    const evaluate = (sampleOf: (source: SourceName) => Sample): Float64Array => {
      const outcomes = new Float64Array(rings);
      const shared = new Float64Array(rings * width);
      const own = new Float64Array(rings * width);
      for (let k = 0; k < rings; k++) shared.set(means, k * width);
      for (let k = 0; k < rings; k++) own.set(pieceMeans, k * width);
      for (const source of sources) {
        const from = drawn[sampleOf(source)];
        const [s, p] = [from.shared.get(source)!, from.perPiece.get(source)!];
        for (let k = 0; k < rings * width; k++) {
          shared[k]! += s[k]!;
          own[k]! += p[k]!;
        }
      }
      if (plan.test) {
        runTestCuts(plan.test, plan.method.test, shared, plan.matrix, rings, seed, block, new Uint8Array(rings));
      }
      for (let k = 0; k < rings * width; k++) shared[k]! += own[k]!;
      const rows = Float64Array.from(drawn[sampleOf('bulge')].bulges);
      const snags = drawn[sampleOf('snags')].snags;
      for (let k = 0; k < rings * perRing; k++) rows[k]! += snags[k]!;
      const { corners } = drawn[sampleOf('truing')];
      for (let k = 0; k < rings; k++) {
        grading.grade(0, shared, k * width, rows, k, corners, 8 * k);
        outcomes[k] = outcomeNow();
      }
      return outcomes;
    };
    return {
      a: evaluate(() => 'A'),
      b: evaluate(() => 'B'),
      mixed: sources.map((source) => evaluate((other) => (other === source ? 'B' : 'A'))),
    };
  };
  return { sources, sample };
}

/** First-order and total index of every source, from blocks in their order. */
export function sourceIndices(sources: readonly SourceName[], blocks: readonly GroupedSample[]): SourceIndices[] {
  const whole = {
    a: joined(blocks.map(({ a }) => a)),
    b: joined(blocks.map(({ b }) => b)),
    mixed: sources.map((_, i) => joined(blocks.map(({ mixed }) => mixed[i]!))),
  };
  return sobolIndices(whole).map((indices, i) => ({ source: sources[i]!, ...indices }));
}

function joined(parts: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** Yields the rings done after every block. */
export function* sourceSensitivity(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
  outcome: IndexedOutcome = 'showGapMm',
): Generator<number, SourceIndices[], void> {
  const trials = options.trials ?? SENSITIVITY_TRIALS;
  const { sources, sample } = sensitivitySampler(project, methodIndex, options, outcome);
  const loop = blockLoop({
    trials,
    run: atOnce(sample),
    ...(options.shouldStop && { shouldStop: options.shouldStop }),
  });
  for (;;) {
    const step = loop.next();
    if (step.done) return sourceIndices(sources, step.value.blocks);
    yield step.value;
  }
}
