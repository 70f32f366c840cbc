/** Whoever does the tasks of a project: worker threads, or this thread where threads are not worth it. */
import { existsSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { Project } from '../../sim/project/document';
import { type Outcomes, type Task, type TaskRunner, taskDoer } from './task';
import { TaskPool } from './task-pool';

/** Where a run may use worker threads. */
export interface Threads {
  /** Threads to use; 1 stays in this one. */
  workers: number;
  /** The built program of a worker thread; where there is none, everything stays in this thread. */
  workerProgram: URL;
}

export function usesThreads({ workers, workerProgram }: Threads): boolean {
  return workers > 1 && existsSync(workerProgram);
}

export function taskRunner(project: Project, threads: Threads): TaskRunner {
  if (usesThreads(threads)) {
    return new TaskPool(threads.workers, () => new Worker(threads.workerProgram, { workerData: project }));
  }
  const doTask = taskDoer(project);
  return {
    do: <Kind extends keyof Outcomes>(task: Task & { kind: Kind }) => {
      // Between two tasks whoever waits for the first gets a turn.
      const done = setImmediate().then(() => doTask(task) as Outcomes[Kind]);
      done.catch(() => {});
      return done;
    },
    close: async () => {},
  };
}
