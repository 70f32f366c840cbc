/** How much two threads gain over one, how a ring's time grows with its staves, and how soon a stopped run answers. */
import { Worker } from 'node:worker_threads';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { runMethod } from '../../sim/run/run-method';
import { TaskPool } from './task-pool';

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
  const pool = new TaskPool(size, () => new Worker(program, { workerData: project }));
  const doBlocks = (from: number, count: number) =>
    Promise.all(Array.from({ length: count }, (_, k) => pool.do({ kind: 'block', method: 0, block: from + k })));
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

/**
 * Milliseconds from a stop to the figures of the rings done by then; the longest of stops at many moments of a run,
 * while rings are made and while set-ups are costed. The least of three rounds, since other work only makes it slower.
 */
export function stopIsObeyed(rings: number, batch: number): MeasureRow {
  const example = exampleProject();
  const project = { ...example, costs: { ...example.costs, batch }, run: { ...example.run, trials: rings } };
  const longest = (): number => {
    let worstMs = 0;
    for (const share of [0.1, 0.5, 0.9, 1]) {
      let isStopped = false;
      const steps = runMethod(project, 0, { shouldStop: () => isStopped });
      let stoppedAtMs = 0;
      let stepsOfCosting = 0;
      for (;;) {
        const step = steps.next();
        if (step.done) break;
        if (step.value.ringsDone === rings) stepsOfCosting++;
        if (!isStopped && step.value.ringsDone >= share * rings && (share < 1 || stepsOfCosting === 3)) {
          isStopped = true;
          stoppedAtMs = performance.now();
        }
      }
      worstMs = Math.max(worstMs, performance.now() - stoppedAtMs);
    }
    return worstMs;
  };
  const value = Math.round(Math.min(...Array.from({ length: TRIES }, longest)));
  const name = `from a stop to the figures, ${rings.toLocaleString('en')} rings, ${batch} to make`;
  return { name, value, unit: 'ms', wanted: 100, wantedIs: 'most' };
}
