/** The rings of methods, each method's blocks spread over the workers of a pool; the digits are the same on any number of them. */
import { budgetLines, type SourceBudget } from '../budget/budget';
import type { Project } from '../project/document';
import { blockCount, TakenBlocks } from '../run/block-loop';
import type { BlockResult } from '../run/block-result';
import type { MethodResult, RunProgress } from '../run/prediction';
import { settleWatch } from '../run/settled';
import { askBudget } from './questions';
import type { Job, TaskPool } from './task-pool';
import type { Task } from './tasks';

export interface RingsWay {
  /** With the error budget. */
  budget?: boolean;
  onProgress?: (progress: RunProgress) => void;
  /** The clock, where each method is to say how long it took. */
  nowMs?: () => number;
}

export interface RunningRings {
  /**
   * In the order of the methods, which are begun in this order. After a stop those begun give the rings done so far,
   * a block in any case, without a budget; null for those not begun. Rejects with TaskFailed, and when dropped with TaskDropped.
   */
  results: Promise<MethodResult | null>[];
  /** No further ring is made; what is done is summed up. */
  stop: () => void;
  /** Ends it without results. */
  drop: () => void;
}

/** Trials, seed and rule are the project's. */
export function runRings(pool: TaskPool, project: Project, methods: readonly number[], way: RingsWay): RunningRings {
  const job = pool.job(project);
  let tellStop = (): void => {};
  const run: Run = { job, project, way, ahead: 2 * pool.size, isStopped: false, stop: Promise.resolve(null) };
  run.stop = new Promise((resolve) => {
    tellStop = () => resolve(null);
  });
  const results: Promise<MethodResult | null>[] = [];
  let turn = Promise.resolve();
  for (const method of methods) {
    const { result, allAsked } = oneMethod(run, method, turn);
    result.catch(() => {});
    results.push(result);
    turn = allAsked;
  }
  return {
    results,
    stop() {
      run.isStopped = true;
      // Before the tasks are dropped, so that whoever waits hears of a stop and not of a failure.
      tellStop();
      job.drop((task) => !(task.kind === 'cost' || task.kind === 'merge' || isFirstBlock(task)));
      job.stop();
    },
    drop() {
      run.isStopped = true;
      job.drop();
    },
  };
}

const isFirstBlock = (task: Task): boolean => task.kind === 'block' && task.block === 0;

interface Run {
  job: Job;
  project: Project;
  way: RingsWay;
  /** How many blocks are asked for before the first of them is there. */
  ahead: number;
  isStopped: boolean;
  /** Resolves when it is stopped. */
  stop: Promise<null>;
}

/**
 * @param turn when this method may start asking
 * @returns `allAsked` resolves when the next method may
 */
function oneMethod(
  run: Run,
  method: number,
  turn: Promise<void>,
): { result: Promise<MethodResult | null>; allAsked: Promise<void> } {
  let tellAllAsked = (): void => {};
  const allAsked = new Promise<void>((resolve) => {
    tellAllAsked = resolve;
  });
  const result = turn.then(() => (run.isStopped ? null : takeRings(run, method, tellAllAsked)));
  const ended = result.finally(() => {
    run.job.drop((task) => 'method' in task && task.method === method);
    tellAllAsked();
  });
  return { result: ended, allAsked };
}

/** Asks for blocks a little ahead of the one it waits for, and takes them in order. */
async function takeRings(run: Run, method: number, tellAllAsked: () => void): Promise<MethodResult> {
  const { job, project, way, ahead, stop } = run;
  const { trials, settle } = project.run;
  const count = blockCount(trials);
  const startMs = way.nowMs?.() ?? 0;
  const cost = job.do({ kind: 'cost', method });
  const watch = settle && settleWatch(settle.relative);
  const taken = new TakenBlocks<BlockResult>({ trials, ...(watch && { settled: (block) => watch.add(block) }) });
  const asked: Promise<BlockResult>[] = [];
  while (taken.end === null && !run.isStopped) {
    while (asked.length < Math.min(count, taken.blocks.length + ahead)) {
      asked.push(job.do({ kind: 'block', method, block: asked.length }));
    }
    if (asked.length === count) tellAllAsked();
    const next = asked[taken.blocks.length]!;
    // A first block is waited for in any case: without it there is nothing to keep.
    const block = await (taken.blocks.length === 0 ? next : Promise.race([next, stop]));
    if (block === null) break;
    taken.take(block);
    way.onProgress?.({ method, ringsDone: taken.trialsDone, ringsWanted: trials });
  }
  job.drop((task) => task.kind === 'block' && task.method === method);
  tellAllAsked();
  const budget = way.budget === true && !run.isStopped ? askBudget(job.do, project, method, {}) : null;
  budget?.catch(() => {});
  const { blocks, end } = taken;
  const merged = await job.do({ kind: 'merge', method, blocks, stopReason: end ?? 'cancelled', cost: await cost });
  const found = await Promise.race([budget, stop]);
  return finished(merged, found, way.nowMs && way.nowMs() - startMs);
}

function finished(result: MethodResult, budget: SourceBudget | null, elapsedMs: number | undefined): MethodResult {
  const { name, trials, rule, cost, ...between } = result.prediction;
  const took = elapsedMs !== undefined && { elapsedMs: Math.round(elapsedMs) };
  const lines = budget && { budget: budgetLines(budget) };
  return { ...result, prediction: { name, trials, rule, ...took, ...between, ...lines, cost } };
}
