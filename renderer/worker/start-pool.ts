import { type StartWorker, type TaskPool, taskPool } from '../../sim/questions/task-pool';
import type { FromWorker } from '../../sim/questions/work-loop';

const MOST_WORKERS = 4;

/** One worker for each processor core, four at most. */
export function startPool(): TaskPool {
  return taskPool(Math.min(MOST_WORKERS, Math.max(1, navigator.hardwareConcurrency)), startWorker);
}

/** One worker of its own, so that it never stands in the way of the rings. */
export function startWorkerAlone(): TaskPool {
  return taskPool(1, startWorker);
}

const startWorker: StartWorker = (hear, broke) => {
  const worker = new Worker(new URL('./simulate.worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => hear(data);
  worker.onerror = ({ message }) => {
    broke(new Error(message || 'The simulation stopped unexpectedly. Change a value to try again.'));
  };
  return { tell: (message, handedOver) => worker.postMessage(message, handedOver), end: () => worker.terminate() };
};
