/** Runs methods of a project, spread over worker threads where that is worth it; the digits are the same either way. */
import { type Project, SOURCE_NAMES } from '../../sim/project/document';
import { type RingsWay, runRings } from '../../sim/questions/rings';
import { blockCount } from '../../sim/run/block-loop';
import type { MethodResult } from '../../sim/run/prediction';
import { nowMs, type Threads, threadPool } from './thread-pool';

export interface RunWay extends Threads, Omit<RingsWay, 'nowMs'> {
  /** With the time each method took. */
  timing?: boolean;
  /** Once it is aborted no further ring is made. */
  stop?: AbortSignal;
}

/**
 * Results in the order of `methods` (indices), each as soon as it is there. Trials, seed and rule are the project's.
 * After a stop the methods begun give the rings done so far, without a budget; those not begun give nothing.
 */
export async function* runMethods(
  project: Project,
  methods: readonly number[],
  way: RunWay,
): AsyncGenerator<MethodResult, void, void> {
  const tasksAMethod = blockCount(project.run.trials) + (way.budget ? SOURCE_NAMES.length : 0);
  const pool = threadPool({ ...way, workers: Math.min(way.workers, tasksAMethod * methods.length) });
  const running = runRings(pool, project, methods, { ...way, ...(way.timing && { nowMs }) });
  way.stop?.addEventListener('abort', running.stop, { once: true });
  if (way.stop?.aborted) running.stop();
  try {
    for (const waited of running.results) {
      const result = await waited;
      if (result !== null) yield result;
    }
  } finally {
    way.stop?.removeEventListener('abort', running.stop);
    await pool.close();
  }
}
