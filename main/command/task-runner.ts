/** Whoever does the tasks of a project: worker threads, or this thread where threads are not worth it. */
import { existsSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { Project } from '../../sim/project/document';
import { type Outcomes, type Task, taskDoer } from './task';
import { TaskPool } from './task-pool';

export interface TaskRunner {
  /**
   * Tasks are begun in the order in which they are asked for. A failure no one waits for any more is let go; it has
   * reached whoever waits for the run.
   */
  do<Kind extends keyof Outcomes>(task: Task & { kind: Kind }): Promise<Outcomes[Kind]>;
  close(): Promise<void>;
}

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
