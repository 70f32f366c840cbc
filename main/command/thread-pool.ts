/** The workers of the command line: threads, or this thread where threads are not worth it. */
import { existsSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { type StartWorker, type TaskPool, taskPool } from '../../sim/questions/task-pool';
import { workLoop } from '../../sim/questions/work-loop';

/** Where a run may use worker threads. */
export interface Threads {
  /** Threads to use; 1 stays in this one. */
  workers: number;
  /** The built program of a worker thread; where there is none, everything stays in this thread. */
  workerProgram: URL;
}

export function threadPool({ workers, workerProgram }: Threads): TaskPool {
  const usesThreads = workers > 1 && existsSync(workerProgram);
  return usesThreads ? taskPool(workers, startThread(workerProgram)) : taskPool(1, stayHere);
}

export const nowMs = (): number => performance.now();

/** @param program the built program of a worker thread */
export function startThread(program: URL): StartWorker {
  return (hear, broke) => {
    const thread = new Worker(program);
    thread.on('message', hear);
    thread.on('error', (error) => broke(error instanceof Error ? error : new Error(String(error))));
    thread.on('exit', () => broke(new Error('A worker thread ended before its task was done.')));
    return { tell: (message, handedOver) => thread.postMessage(message, handedOver), end: () => thread.terminate() };
  };
}

/** Between two tasks, and every few milliseconds of one, whoever waits or stops gets a turn. */
const stayHere: StartWorker = (hear) => {
  const heard = workLoop({ tell: hear, listen: () => setImmediate(), nowMs });
  return { tell: (message) => void setImmediate().then(() => heard(message)) };
};
