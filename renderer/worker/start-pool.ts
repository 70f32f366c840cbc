import { type SimulationPool, simulationPool } from './pool';

const MOST_WORKERS = 4;

/** One worker for each processor core, four at most. */
export function startPool(): SimulationPool {
  return simulationPool(Math.min(MOST_WORKERS, Math.max(1, navigator.hardwareConcurrency)), startWorker);
}

/** One worker of its own, so that it never stands in the way of the rings. */
export function startWorkerAlone(): SimulationPool {
  return simulationPool(1, startWorker);
}

function startWorker(): Worker {
  return new Worker(new URL('./simulate.worker.ts', import.meta.url), { type: 'module' });
}
