/** Runs methods of a project, spread over worker threads where that is worth it; the digits are the same either way. */
import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { Project } from '../../sim/project/document';
import type { BlockResult } from '../../sim/run/block';
import { blockCount } from '../../sim/run/block-loop';
import { mergeBlocks } from '../../sim/run/merge';
import { methodPlan } from '../../sim/run/plan';
import type { MethodResult, RunProgress, StopReason } from '../../sim/run/prediction';
import { runMethod } from '../../sim/run/run-method';
import { settleWatch } from '../../sim/run/settled';
import { TaskPool } from './task-pool';

export interface RunPlace {
  /** Threads to use; 1 stays in this one. */
  workers: number;
  /** The built program of a worker thread; where there is none, everything stays in this thread. */
  workerProgram: URL;
  onProgress?: (progress: RunProgress) => void;
}

/** Fewer blocks than this are done before a thread has started. */
const FEWEST_BLOCKS_FOR_THREADS = 4;

/** Results in the order of `methods` (indices), each as soon as it is there. Trials, seed and rule are the project's. */
export async function* runMethods(
  project: Project,
  methods: readonly number[],
  place: RunPlace,
): AsyncGenerator<MethodResult, void, void> {
  const blocks = blockCount(project.run.trials) * methods.length;
  const threads = Math.min(place.workers, blocks);
  if (threads < 2 || blocks < FEWEST_BLOCKS_FOR_THREADS || !existsSync(place.workerProgram)) {
    for (const method of methods) yield runHere(project, method, place);
    return;
  }
  const pool = new TaskPool(threads, () => new Worker(place.workerProgram, { workerData: project }));
  try {
    const results: Promise<MethodResult>[] = [];
    let turn = Promise.resolve();
    for (const method of methods) {
      const { result, allAsked } = runInPool(project, method, place, pool, 2 * threads, turn);
      // A failure reaches the reader through the result it is waiting for; the others must not count as unhandled.
      result.catch(() => {});
      results.push(result);
      turn = allAsked;
    }
    for (const result of results) yield await result;
  } finally {
    await pool.close();
  }
}

function runHere(project: Project, method: number, place: RunPlace): MethodResult {
  const startMs = performance.now();
  const run = runMethod(project, method);
  for (;;) {
    const step = run.next();
    if (step.done) return timed(step.value, startMs);
    place.onProgress?.(step.value);
  }
}

/**
 * Asks for blocks a little ahead of the one it waits for, and takes them in order.
 *
 * @param turn when this method may start asking
 * @returns `allAsked` resolves when the next method may
 */
function runInPool(
  project: Project,
  method: number,
  place: RunPlace,
  pool: TaskPool,
  ahead: number,
  turn: Promise<void>,
): { result: Promise<MethodResult>; allAsked: Promise<void> } {
  const { trials, settle } = project.run;
  const count = blockCount(trials);
  let tellAllAsked = (): void => {};
  const allAsked = new Promise<void>((resolve) => {
    tellAllAsked = resolve;
  });
  const run = async (): Promise<MethodResult> => {
    await turn;
    const startMs = performance.now();
    const cost = pool.do({ kind: 'cost', method });
    cost.catch(() => {});
    const plan = methodPlan(project, method);
    const watch = settle && settleWatch(settle.relative);
    const asked: ReturnType<TaskPool['do']>[] = [];
    const blocks: BlockResult[] = [];
    let ringsDone = 0;
    let stopReason: StopReason = 'trial-limit';
    while (blocks.length < count && stopReason !== 'settled') {
      while (asked.length < Math.min(count, blocks.length + ahead)) {
        const task = pool.do({ kind: 'block', method, block: asked.length });
        task.catch(() => {});
        asked.push(task);
      }
      if (asked.length === count) tellAllAsked();
      const done = await asked[blocks.length]!;
      if (done.kind !== 'block') throw new Error('A worker thread gave a cost where a block was asked for.');
      blocks.push(done.result);
      ringsDone += done.result.rings;
      place.onProgress?.({ method, ringsDone, ringsWanted: trials });
      if (watch?.add(done.result)) stopReason = 'settled';
    }
    tellAllAsked();
    const priced = await cost;
    if (priced.kind !== 'cost') throw new Error('A worker thread gave a block where a cost was asked for.');
    return timed(mergeBlocks(plan, blocks, stopReason, priced.result), startMs);
  };
  return { result: run().finally(tellAllAsked), allAsked };
}

function timed(result: MethodResult, startMs: number): MethodResult {
  const elapsedMs = Math.round(performance.now() - startMs);
  return { ...result, prediction: { ...result.prediction, elapsedMs } };
}
