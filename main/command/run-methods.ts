/** Runs methods of a project, spread over worker threads where that is worth it; the digits are the same either way. */
import { budgetLines, type SourceBudget, sourceBudget } from '../../sim/budget/budget';
import { type Project, SOURCE_NAMES } from '../../sim/project/document';
import type { BlockResult } from '../../sim/run/block';
import { blockCount, finish } from '../../sim/run/block-loop';
import type { MethodResult, RunProgress, StopReason } from '../../sim/run/prediction';
import { runMethod } from '../../sim/run/run-method';
import { settleWatch } from '../../sim/run/settled';
import { askBudget } from './budget-tasks';
import { type TaskRunner, type Threads, taskRunner, usesThreads } from './task-runner';

export interface RunWay extends Threads {
  /** With the error budget. */
  budget: boolean;
  onProgress?: (progress: RunProgress) => void;
}

/** Results in the order of `methods` (indices), each as soon as it is there. Trials, seed and rule are the project's. */
export async function* runMethods(
  project: Project,
  methods: readonly number[],
  way: RunWay,
): AsyncGenerator<MethodResult, void, void> {
  const tasksAMethod = blockCount(project.run.trials) + (way.budget ? SOURCE_NAMES.length : 0);
  const workers = Math.min(way.workers, tasksAMethod * methods.length);
  const threads = { ...way, workers };
  if (!usesThreads(threads)) {
    for (const method of methods) yield runHere(project, method, way);
    return;
  }
  const pool = taskRunner(project, threads);
  try {
    const results: Promise<MethodResult>[] = [];
    let turn = Promise.resolve();
    for (const method of methods) {
      const { result, allAsked } = runInPool(project, method, way, pool, 2 * workers, turn);
      // The first failure ends the run; those of the methods after it have nobody left to tell.
      result.catch(() => {});
      results.push(result);
      turn = allAsked;
    }
    for (const result of results) yield await result;
  } finally {
    await pool.close();
  }
}

function runHere(project: Project, method: number, way: RunWay): MethodResult {
  const startMs = performance.now();
  const run = runMethod(project, method);
  for (;;) {
    const step = run.next();
    if (step.done) {
      const budget = way.budget ? finish(sourceBudget(project, method)) : undefined;
      return finished(step.value, budget, startMs);
    }
    way.onProgress?.(step.value);
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
  way: RunWay,
  pool: TaskRunner,
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
    const budget = way.budget ? askBudget(pool, project, method, {}) : undefined;
    budget?.catch(() => {});
    const cost = pool.do({ kind: 'cost', method });
    const watch = settle && settleWatch(settle.relative);
    const asked: Promise<BlockResult>[] = [];
    const blocks: BlockResult[] = [];
    let ringsDone = 0;
    let stopReason: StopReason = 'trial-limit';
    while (blocks.length < count && stopReason !== 'settled') {
      while (asked.length < Math.min(count, blocks.length + ahead)) {
        asked.push(pool.do({ kind: 'block', method, block: asked.length }));
      }
      if (asked.length === count) tellAllAsked();
      const block = await asked[blocks.length]!;
      blocks.push(block);
      ringsDone += block.rings;
      way.onProgress?.({ method, ringsDone, ringsWanted: trials });
      if (watch?.add(block)) stopReason = 'settled';
    }
    tellAllAsked();
    const result = await pool.do({ kind: 'merge', method, blocks, stopReason, cost: await cost });
    return finished(result, await budget, startMs);
  };
  return { result: run().finally(tellAllAsked), allAsked };
}

function finished(result: MethodResult, budget: SourceBudget | undefined, startMs: number): MethodResult {
  const { cost, ...before } = result.prediction;
  const elapsedMs = Math.round(performance.now() - startMs);
  return { ...result, prediction: { ...before, elapsedMs, ...(budget && { budget: budgetLines(budget) }), cost } };
}
