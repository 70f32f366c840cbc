/** How much two threads gain over one, how soon a stopped run answers, and how long a question takes on all cores. */
import { availableParallelism } from 'node:os';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { askPool } from '../../sim/questions/ask-pool';
import { runRings } from '../../sim/questions/rings';
import { type TaskPool, taskPool } from '../../sim/questions/task-pool';
import { nowMs, startThread } from './thread-pool';

export interface MeasureRow {
  name: string;
  value: number;
  unit: 'times' | 'ms';
  /** `most`: the value may not be above `wanted`; else not below. */
  wanted: number;
  wantedIs: 'least' | 'most';
}

const BLOCKS = 60;
const TRIES = 3;

/** Seconds that `size` threads take for the same blocks of rings, their start not counted. */
async function secondsWith(size: number, project: Project, program: URL): Promise<number> {
  const pool = taskPool(size, startThread(program));
  const job = pool.job(project);
  const doBlocks = (from: number, count: number) =>
    Promise.all(Array.from({ length: count }, (_, k) => job.do({ kind: 'block', method: 0, block: from + k })));
  try {
    await doBlocks(0, 4 * size);
    const start = performance.now();
    await doBlocks(0, BLOCKS);
    return (performance.now() - start) / 1000;
  } finally {
    await pool.close();
  }
}

/** @param workerProgram the built program of a worker thread */
export async function twoThreadsOverOne(project: Project, workerProgram: URL): Promise<MeasureRow> {
  const many = { ...project, run: { ...project.run, trials: BLOCKS * 4000 } };
  const gains: number[] = [];
  for (let k = 0; k < TRIES; k++) {
    const one = await secondsWith(1, many, workerProgram);
    gains.push(one / (await secondsWith(2, many, workerProgram)));
  }
  const value = Number(Math.max(...gains).toFixed(2));
  return { name: 'two threads over one, contact', value, unit: 'times', wanted: 1.7, wantedIs: 'least' };
}

/** Threads that are up to speed, for what `measure` does with them. */
async function onAllCores<Result>(program: URL, measure: (pool: TaskPool) => Promise<Result>): Promise<Result> {
  const pool = taskPool(availableParallelism(), startThread(program));
  try {
    await askPool(pool, exampleProject(), 0, { kind: 'budget', rings: 2000 }).answer;
    return await measure(pool);
  } finally {
    await pool.close();
  }
}

/**
 * Milliseconds from a stop to the figures of the rings done by then; the longest of stops at many moments of a run,
 * while rings are made and while set-ups are costed. The least of three rounds, since other work only makes it slower.
 */
export function stopIsObeyed(rings: number, batch: number, workerProgram: URL): Promise<MeasureRow> {
  const example = exampleProject();
  const project = { ...example, costs: { ...example.costs, batch }, run: { ...example.run, trials: rings } };
  return onAllCores(workerProgram, async (pool) => {
    const stopped = async (share: number): Promise<number> => {
      let stoppedAtMs: number | undefined;
      const onProgress = ({ ringsDone }: { ringsDone: number }) => {
        if (stoppedAtMs !== undefined || ringsDone < share * rings) return;
        stoppedAtMs = nowMs();
        running.stop();
      };
      const running = runRings(pool, project, [0], { nowMs, onProgress });
      await Promise.all(running.results);
      return nowMs() - (stoppedAtMs ?? Number.NEGATIVE_INFINITY);
    };
    let leastMs = Number.POSITIVE_INFINITY;
    for (let k = 0; k < TRIES; k++) {
      let worstMs = 0;
      for (const share of [0.1, 0.5, 0.9, 1]) worstMs = Math.max(worstMs, await stopped(share));
      leastMs = Math.min(leastMs, worstMs);
    }
    const name = `from a stop to the figures, ${rings.toLocaleString('en')} rings, ${batch} to make`;
    return { name, value: Math.round(leastMs), unit: 'ms', wanted: 100, wantedIs: 'most' };
  });
}

/** The window's question of where the gaps of one method come from, contact rule; the best of three. */
export function budgetOnAllCores(workerProgram: URL): Promise<MeasureRow> {
  return onAllCores(workerProgram, async (pool) => {
    const times: number[] = [];
    for (let k = 0; k < TRIES; k++) {
      const startMs = nowMs();
      await askPool(pool, exampleProject(), 0, { kind: 'budget' }).answer;
      times.push(nowMs() - startMs);
    }
    const value = Math.round(Math.min(...times));
    return { name: 'budget of one method, all cores', value, unit: 'ms', wanted: 2000, wantedIs: 'most' };
  });
}
