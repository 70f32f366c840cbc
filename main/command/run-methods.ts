/** Runs methods of a project, spread over worker threads where that is worth it; the digits are the same either way. */

import { setImmediate } from 'node:timers/promises';
import { budgetLines, type SourceBudget, sourceBudget } from '../../sim/budget/budget';
import { type Project, SOURCE_NAMES } from '../../sim/project/document';
import { blockCount, finish } from '../../sim/run/block-loop';
import type { BlockResult } from '../../sim/run/block-result';
import type { MethodResult, RunProgress, StopReason } from '../../sim/run/prediction';
import { runMethod } from '../../sim/run/run-method';
import { settleWatch } from '../../sim/run/settled';
import { askBudget } from './budget-tasks';
import type { TaskRunner } from './task';
import { type Threads, taskRunner, usesThreads } from './task-runner';

/** How long one thread works before it listens for a stop, ms. */
const LISTEN_EVERY_MS = 30;

export interface RunWay extends Threads {
  /** With the error budget. */
  budget: boolean;
  /** With the time each method took. */
  timing?: boolean;
  onProgress?: (progress: RunProgress) => void;
  /** Once it is aborted no further ring is made. */
  stop?: AbortSignal;
}

/**
 * Results in the order of `methods` (indices), each as soon as it is there. Trials, seed and rule are the project's.
 * After a stop the methods begun give the rings done so far, without a budget; those not begun give nothing.
 */
export async function* runMethods(
  project: Project,
  methods: readonly number[],
  way: RunWay,
): AsyncGenerator<MethodResult, void, void> {
  const tasksAMethod = blockCount(project.run.trials) + (way.budget ? SOURCE_NAMES.length : 0);
  const workers = Math.min(way.workers, tasksAMethod * methods.length);
  const threads = { ...way, workers };
  if (!usesThreads(threads)) {
    for (const method of methods) {
      if (way.stop?.aborted) return;
      yield await runHere(project, method, way);
    }
    return;
  }
  const pool = taskRunner(project, threads);
  try {
    const results: Promise<MethodResult | null>[] = [];
    let turn = Promise.resolve();
    for (const method of methods) {
      const { result, allAsked } = runInPool(project, method, way, pool, 2 * workers, turn);
      // The first failure ends the run; those of the methods after it have nobody left to tell.
      result.catch(() => {});
      results.push(result);
      turn = allAsked;
    }
    for (const waited of results) {
      const result = await waited;
      if (result !== null) yield result;
    }
  } finally {
    await pool.close();
  }
}

async function runHere(project: Project, method: number, way: RunWay): Promise<MethodResult> {
  const startMs = performance.now();
  const isStopped = () => way.stop?.aborted === true;
  const run = runMethod(project, method, { shouldStop: isStopped });
  let heardMs = startMs;
  for (;;) {
    const step = run.next();
    if (step.done) {
      const budget = way.budget && !isStopped() ? finish(sourceBudget(project, method)) : undefined;
      return finished(step.value, budget, way, startMs);
    }
    way.onProgress?.(step.value);
    if (way.stop !== undefined && performance.now() - heardMs > LISTEN_EVERY_MS) {
      await setImmediate();
      heardMs = performance.now();
    }
  }
}

/** Resolves with null when the run is stopped. */
function stopped(stop: AbortSignal | undefined): Promise<null> {
  return new Promise((resolve) => {
    if (stop?.aborted) resolve(null);
    else stop?.addEventListener('abort', () => resolve(null), { once: true });
  });
}

/**
 * Asks for blocks a little ahead of the one it waits for, and takes them in order; null when stopped before the first.
 *
 * @param turn when this method may start asking
 * @returns `allAsked` resolves when the next method may
 */
function runInPool(
  project: Project,
  method: number,
  way: RunWay,
  pool: TaskRunner,
  ahead: number,
  turn: Promise<void>,
): { result: Promise<MethodResult | null>; allAsked: Promise<void> } {
  const { trials, settle } = project.run;
  const count = blockCount(trials);
  let tellAllAsked = (): void => {};
  const allAsked = new Promise<void>((resolve) => {
    tellAllAsked = resolve;
  });
  const stop = stopped(way.stop);
  const run = async (): Promise<MethodResult | null> => {
    await turn;
    if (way.stop?.aborted) return null;
    const startMs = performance.now();
    const budget = way.budget ? askBudget(pool, project, method, {}) : undefined;
    budget?.catch(() => {});
    const cost = pool.do({ kind: 'cost', method });
    const watch = settle && settleWatch(settle.relative);
    const asked: Promise<BlockResult>[] = [];
    const blocks: BlockResult[] = [];
    let ringsDone = 0;
    let stopReason: StopReason = 'trial-limit';
    while (blocks.length < count && stopReason === 'trial-limit') {
      while (asked.length < Math.min(count, blocks.length + ahead)) {
        asked.push(pool.do({ kind: 'block', method, block: asked.length }));
      }
      if (asked.length === count) tellAllAsked();
      const block = await Promise.race([asked[blocks.length]!, stop]);
      if (block === null) {
        stopReason = 'cancelled';
        break;
      }
      blocks.push(block);
      ringsDone += block.rings;
      way.onProgress?.({ method, ringsDone, ringsWanted: trials });
      if (watch?.add(block)) stopReason = 'settled';
    }
    tellAllAsked();
    if (blocks.length === 0) return null;
    const result = await pool.do({ kind: 'merge', method, blocks, stopReason, cost: await cost });
    return finished(result, stopReason === 'cancelled' ? undefined : await Promise.race([budget, stop]), way, startMs);
  };
  return { result: run().finally(tellAllAsked), allAsked };
}

function finished(
  result: MethodResult,
  budget: SourceBudget | null | undefined,
  { timing }: RunWay,
  startMs: number,
): MethodResult {
  const { name, trials, rule, cost, ...between } = result.prediction;
  const took = timing && { elapsedMs: Math.round(performance.now() - startMs) };
  const lines = budget && { budget: budgetLines(budget) };
  return { ...result, prediction: { name, trials, rule, ...took, ...between, ...lines, cost } };
}
