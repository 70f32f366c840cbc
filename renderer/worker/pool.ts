/** A few simulation workers and the tasks that wait for them. */
import type { MethodResult, RunProgress } from '../../sim/run/prediction';
import type { FromWorker, Task, ToWorker } from './protocol';

/** The part of a Worker that the pool uses. */
export interface SimulationWorker {
  postMessage(message: ToWorker): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** The engine refused or broke; the message is a sentence fit to be shown. */
export class SimulationFailed extends Error {}

export interface RunningTask {
  /** Resolves with null when the task was dropped; rejects with SimulationFailed. */
  result: Promise<MethodResult | null>;
  /** Ends the task with the rings done so far. */
  stop: () => void;
  /** Ends the task without a result. */
  drop: () => void;
}

interface Entry {
  id: number;
  task: Task;
  worker: SimulationWorker | null;
  onProgress: ((progress: RunProgress) => void) | undefined;
  resolve: (result: MethodResult | null) => void;
  reject: (error: SimulationFailed) => void;
}

export interface SimulationPool {
  /** How many tasks run side by side. */
  readonly size: number;
  run(task: Task, onProgress?: (progress: RunProgress) => void): RunningTask;
}

/** `size` workers, made when first needed. Tasks start in the order they were given. */
export function simulationPool(size: number, makeWorker: () => SimulationWorker): SimulationPool {
  const idle: SimulationWorker[] = [];
  const waiting: Entry[] = [];
  const running = new Map<number, Entry>();
  let made = 0;
  let lastId = 0;

  const idleWorker = (): SimulationWorker | null => {
    const worker = idle.pop();
    if (worker) return worker;
    if (made >= size) return null;
    made++;
    return makeWorker();
  };

  const startWaiting = (): void => {
    while (waiting.length > 0) {
      const worker = idleWorker();
      if (!worker) return;
      const entry = waiting.shift();
      if (entry) start(entry, worker);
    }
  };

  const finish = (entry: Entry): void => {
    running.delete(entry.id);
    if (entry.worker) idle.push(entry.worker);
    startWaiting();
  };

  const start = (entry: Entry, worker: SimulationWorker): void => {
    entry.worker = worker;
    running.set(entry.id, entry);
    worker.onmessage = ({ data }) => {
      if (data.id !== entry.id) return;
      if (data.say === 'progress') return entry.onProgress?.(data.progress);
      finish(entry);
      if (data.say === 'result') entry.resolve(data.result);
      else if (data.say === 'dropped') entry.resolve(null);
      else entry.reject(new SimulationFailed(data.sentence));
    };
    worker.onerror = (event) => {
      // A worker that broke is not used again; another takes its place.
      entry.worker = null;
      made--;
      finish(entry);
      entry.reject(
        new SimulationFailed(event.message || 'The simulation stopped unexpectedly. Change a value to try again.'),
      );
    };
    worker.postMessage({ say: 'run', id: entry.id, task: entry.task });
  };

  const end = (entry: Entry, say: 'stop' | 'drop'): void => {
    const place = waiting.indexOf(entry);
    if (place >= 0) {
      waiting.splice(place, 1);
      entry.resolve(null);
    } else if (running.has(entry.id)) {
      entry.worker?.postMessage({ say, id: entry.id });
    }
  };

  return {
    size,
    run(task, onProgress) {
      const settled = { resolve: (_: MethodResult | null) => {}, reject: (_: SimulationFailed) => {} };
      const result = new Promise<MethodResult | null>((resolve, reject) => Object.assign(settled, { resolve, reject }));
      const entry: Entry = { id: ++lastId, task, worker: null, onProgress, ...settled };
      waiting.push(entry);
      startWaiting();
      return { result, stop: () => end(entry, 'stop'), drop: () => end(entry, 'drop') };
    },
  };
}
