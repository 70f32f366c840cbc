import { type SimulationPool, simulationPool } from './pool';

const MOST_WORKERS = 4;

/** One worker for each processor core, four at most. */
export function startPool(): SimulationPool {
  const size = Math.min(MOST_WORKERS, Math.max(1, navigator.hardwareConcurrency));
  return simulationPool(size, () => new Worker(new URL('./simulate.worker.ts', import.meta.url), { type: 'module' }));
}
