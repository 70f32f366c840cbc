/** A few simulation workers and the tasks that wait for them. */
import type { MethodResult, RunProgress } from '../../sim/run/prediction';
import type { FromWorker, QuestionTask, Task, ToWorker } from './protocol';
import type { Answers, QuestionKind, QuestionProgress } from './questions';

/** The part of a Worker that the pool uses. */
export interface SimulationWorker {
  postMessage(message: ToWorker): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  /** Ends the worker in the middle of what it does; one that cannot is told to drop it instead. */
  terminate?(): void;
}

/** The engine refused or broke; the message is a sentence fit to be shown. */
export class SimulationFailed extends Error {}

export interface RunningTask {
  /** Resolves with null when the task was dropped; after a stop, with the methods begun; rejects with SimulationFailed. */
  results: Promise<readonly MethodResult[] | null>;
  /** Ends the task with the rings done so far. */
  stop: () => void;
  /** Ends the task without a result. */
  drop: () => void;
}

/** Whoever wants to know of a task before its result. */
export interface TaskHearer {
  progress?: (progress: RunProgress) => void;
  /** A stop was obeyed: no further ring is made, and the result follows. */
  stopped?: () => void;
}

export interface RunningQuestion<Kind extends QuestionKind> {
  /** Resolves with null when the question was dropped; rejects with SimulationFailed. */
  answer: Promise<Answers[Kind] | null>;
  drop: () => void;
}

interface Entry {
  id: number;
  order: ToWorker;
  worker: SimulationWorker | null;
  /** What comes back before the end, and the end itself. */
  hear: (message: FromWorker) => void;
  dropped: () => void;
  failed: (error: SimulationFailed) => void;
}

export interface SimulationPool {
  /** How many tasks run side by side. */
  readonly size: number;
  run(task: Task, hear?: TaskHearer): RunningTask;
  ask<Kind extends QuestionKind>(
    task: QuestionTask<Kind>,
    onProgress?: (progress: QuestionProgress) => void,
  ): RunningQuestion<Kind>;
}

interface Promised<Value> {
  promise: Promise<Value>;
  resolve: (value: Value) => void;
  reject: (error: SimulationFailed) => void;
}

/** A promise that is kept or broken from outside. */
function promised<Value>(): Promised<Value> {
  const ends: Omit<Promised<Value>, 'promise'> = { resolve: () => {}, reject: () => {} };
  const promise = new Promise<Value>((resolve, reject) => Object.assign(ends, { resolve, reject }));
  return { promise, resolve: (value) => ends.resolve(value), reject: (error) => ends.reject(error) };
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

  /** The worker is not used again; another takes its place. */
  const lose = (entry: Entry): void => {
    const place = entry.worker ? idle.indexOf(entry.worker) : -1;
    if (place >= 0) idle.splice(place, 1);
    entry.worker = null;
    made--;
    finish(entry);
  };

  const start = (entry: Entry, worker: SimulationWorker): void => {
    entry.worker = worker;
    running.set(entry.id, entry);
    worker.onmessage = ({ data }) => {
      // The end of one that was dropped may have been on its way; its worker is free already, or at work on another.
      if (data.id !== entry.id || !running.has(entry.id)) return;
      if (data.say === 'progress' || data.say === 'question progress' || data.say === 'stopped')
        return entry.hear(data);
      finish(entry);
      if (data.say === 'failed') entry.failed(new SimulationFailed(data.sentence));
      else entry.hear(data);
    };
    worker.onerror = (event) => {
      lose(entry);
      entry.failed(
        new SimulationFailed(event.message || 'The simulation stopped unexpectedly. Change a value to try again.'),
      );
    };
    worker.postMessage(entry.order);
  };

  const enqueue = (entry: Entry): void => {
    waiting.push(entry);
    startWaiting();
  };

  /** Takes a task out that has not been started. */
  const takeOut = (entry: Entry): boolean => {
    const place = waiting.indexOf(entry);
    if (place < 0) return false;
    waiting.splice(place, 1);
    entry.dropped();
    return true;
  };

  const stop = (entry: Entry): void => {
    if (!takeOut(entry) && running.has(entry.id)) entry.worker?.postMessage({ say: 'stop', id: entry.id });
  };

  /** The worker hears of it before it hears of its next task; nobody waits for its answer. */
  const drop = (entry: Entry): void => {
    if (takeOut(entry) || !running.has(entry.id)) return;
    entry.worker?.postMessage({ say: 'drop', id: entry.id });
    entry.dropped();
    finish(entry);
  };

  /** A step of a long question may take seconds; whoever drops it does not wait for it. */
  const abandon = (entry: Entry): void => {
    if (takeOut(entry) || !running.has(entry.id) || !entry.worker) return;
    if (entry.worker.terminate) {
      entry.worker.terminate();
      lose(entry);
      entry.dropped();
    } else drop(entry);
  };

  return {
    size,
    run(task, hear = {}) {
      const { promise, resolve, reject } = promised<readonly MethodResult[] | null>();
      const id = ++lastId;
      const entry: Entry = {
        id,
        order: { say: 'run', id, task },
        worker: null,
        hear: (message) => {
          if (message.say === 'progress') hear.progress?.(message.progress);
          else if (message.say === 'stopped') hear.stopped?.();
          else if (message.say === 'results') resolve(message.results);
        },
        dropped: () => resolve(null),
        failed: reject,
      };
      enqueue(entry);
      return { results: promise, stop: () => stop(entry), drop: () => drop(entry) };
    },
    ask<Kind extends QuestionKind>(
      { project, method, question }: QuestionTask<Kind>,
      onProgress?: (progress: QuestionProgress) => void,
    ) {
      const { promise, resolve, reject } = promised<Answers[Kind] | null>();
      const id = ++lastId;
      const entry: Entry = {
        id,
        order: { say: 'ask', id, task: { project, method, question } },
        worker: null,
        hear: (message) => {
          if (message.say === 'question progress') onProgress?.(message.progress);
          // The answer is of the kind that was asked for.
          else if (message.say === 'answer') resolve(message.answered.answer as Answers[Kind]);
        },
        dropped: () => resolve(null),
        failed: reject,
      };
      enqueue(entry);
      return { answer: promise, drop: () => abandon(entry) };
    },
  };
}
