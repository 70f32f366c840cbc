/** How much of the show gap's variance each source brings: sensitivity indices by source, on the ring model itself. */
import { runTestCuts } from '../decide/test-cuts';
import type { DrawList } from '../errors/draw-list';
import { activeSources } from '../errors/sources';
import { type Project, SOURCE_NAMES, type SourceName } from '../project/document';
import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import { ringGrading } from '../run/block';
import { BLOCK_TRIALS, blockCount, trialsInBlock } from '../run/block-loop';
import { openRows } from '../run/joint-rows';
import { type MethodPlan, methodPlan } from '../run/plan';
import type { RunOptions } from '../run/run-method';
import { collapsedStage } from '../run/stages';
import { type GroupIndices, sobolIndices } from './sobol';

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

/**
 * First-order and total index of every source on the show gap. Known offsets (a bias, a mean force) stay in place: they
 * have no variance. With test cuts the readings' own errors are drawn alike in both samples, so what they bring is the
 * part of the variance that no source accounts for. Yields after every block.
 */
export function* sourceSensitivity(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
): Generator<number, SourceIndices[], void> {
  const trials = options.trials ?? SENSITIVITY_TRIALS;
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

  const a = new Float64Array(trials);
  const b = new Float64Array(trials);
  const mixed = sources.map(() => new Float64Array(trials));
  let done = 0;
  for (let block = 0; block < blockCount(trials); block++) {
    const count = trialsInBlock(trials, block);
    const drawn = {
      A: drawBlock(plan, sources, 'A', seed, block),
      B: drawBlock(plan, sources, 'B', seed, block),
    };
    const evaluate = (into: Float64Array, sampleOf: (source: SourceName) => Sample) => {
      const shared = new Float64Array(count * width);
      const own = new Float64Array(count * width);
      for (let k = 0; k < count; k++) shared.set(means, k * width);
      for (let k = 0; k < count; k++) own.set(pieceMeans, k * width);
      for (const source of sources) {
        const from = drawn[sampleOf(source)];
        const [s, p] = [from.shared.get(source)!, from.perPiece.get(source)!];
        for (let k = 0; k < count * width; k++) {
          shared[k]! += s[k]!;
          own[k]! += p[k]!;
        }
      }
      if (plan.test) {
        runTestCuts(plan.test, plan.method.test, shared, plan.matrix, count, seed, block, new Uint8Array(count));
      }
      for (let k = 0; k < count * width; k++) shared[k]! += own[k]!;
      const rows = Float64Array.from(drawn[sampleOf('bulge')].bulges);
      const snags = drawn[sampleOf('snags')].snags;
      for (let k = 0; k < count * perRing; k++) rows[k]! += snags[k]!;
      const { corners } = drawn[sampleOf('truing')];
      for (let k = 0; k < count; k++) {
        grading.grade(0, shared, k * width, rows, k, corners, 8 * k);
        into[done + k] = grading.result.showGapMm[0]!;
      }
    };
    evaluate(a, () => 'A');
    evaluate(b, () => 'B');
    sources.forEach((source, i) => {
      evaluate(mixed[i]!, (other) => (other === source ? 'B' : 'A'));
    });
    done += count;
    yield done;
    if (options.shouldStop?.()) break;
  }
  const whole = { a: a.subarray(0, done), b: b.subarray(0, done), mixed: mixed.map((m) => m.subarray(0, done)) };
  return sobolIndices(whole).map((indices, i) => ({ source: sources[i]!, ...indices }));
}
