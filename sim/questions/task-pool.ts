/** Workers that take tasks in the order given. The host says how a worker is started and ended; what it says is the same everywhere. */
import type { Project } from '../project/document';
import { buffersIn } from './buffers';
import { type DoTask, type Outcome, pausesOften, type Task } from './tasks';
import type { FromWorker, ToWorker } from './work-loop';

export interface TaskWorker {
  /** The buffers are handed over, not copied. */
  tell: (message: ToWorker, handedOver: ArrayBuffer[]) => void;
  /** Ends it in the middle of what it does; one that cannot is told to drop it instead. */
  end?: () => unknown;
}

/** Starts a worker; `broke` is told when it is of no use any more. */
export type StartWorker = (hear: (message: FromWorker) => void, broke: (error: Error) => void) => TaskWorker;

/** The engine refused or a worker broke; the message is a sentence fit to be shown. */
export class TaskFailed extends Error {}

/** The task was dropped, and nobody waits for its outcome any more. */
export class TaskDropped extends Error {}

/** Tasks of one project that are given up together. */
export interface Job {
  /** Rejects with TaskFailed or TaskDropped; a failure no one waits for any more is let go. */
  do: DoTask;
  /** Those begun that have something to keep end with what is done. */
  stop: () => void;
  /** Ends tasks without an outcome; left out: all of them, and any that are asked for later. */
  drop: (which?: (task: Task) => boolean) => void;
}

export interface TaskPool {
  /** How many tasks run side by side. */
  readonly size: number;
  job: (project: Project) => Job;
  /** Ends the workers; tasks not done by then never are. */
  close: () => Promise<void>;
}

interface Entry {
  id: number;
  task: Task;
  project: Project;
  place: Place | null;
  shouldStop: boolean;
  resolve: (outcome: Outcome) => void;
  reject: (error: Error) => void;
}

/** One worker, and what it was told last. */
interface Place {
  worker: TaskWorker;
  entry: Entry | null;
  project: Project | null;
}

/** `size` workers, started when first needed. */
export function taskPool(size: number, startWorker: StartWorker): TaskPool {
  const places = new Set<Place>();
  const waiting: Entry[] = [];
  let lastId = 0;
  let isClosed = false;

  const end = (place: Place): void => {
    places.delete(place);
    void place.worker.end?.();
  };

  const broke = (place: Place, error: Error): void => {
    if (isClosed || !places.has(place)) return;
    end(place);
    place.entry?.reject(new TaskFailed(error.message, { cause: error }));
    startWaiting();
  };

  const hear = (place: Place, message: FromWorker): void => {
    const { entry } = place;
    // The end of one that was dropped may have been on its way; its worker is free already, or at work on another.
    if (message.id !== entry?.id) return;
    place.entry = null;
    startWaiting();
    if (message.say === 'failed') entry.reject(new TaskFailed(message.sentence));
    else entry.resolve(message.outcome);
  };

  const freePlace = (): Place | null => {
    for (const place of places) if (place.entry === null) return place;
    if (places.size >= size) return null;
    const worker = startWorker(
      (message) => hear(place, message),
      (error) => broke(place, error),
    );
    const place: Place = { worker, entry: null, project: null };
    places.add(place);
    return place;
  };

  const startWaiting = (): void => {
    while (waiting.length > 0 && !isClosed) {
      const place = freePlace();
      if (!place) return;
      const entry = waiting.shift()!;
      const { id, task, project } = entry;
      const isKnown = place.project === project;
      Object.assign(place, { entry, project });
      entry.place = place;
      place.worker.tell({ say: 'do', id, task, ...(!isKnown && { project }) }, buffersIn(task));
      if (entry.shouldStop) place.worker.tell({ say: 'stop', id }, []);
    }
  };

  /** A worker that pauses often hears of it before its next task; any other is ended, and another takes its place. */
  const giveUp = (entry: Entry): void => {
    const { place, id, task } = entry;
    if (place?.entry !== entry) {
      const at = waiting.indexOf(entry);
      if (at >= 0) waiting.splice(at, 1);
    } else {
      place.entry = null;
      if (!pausesOften(task) && place.worker.end) end(place);
      else place.worker.tell({ say: 'drop', id }, []);
    }
    entry.reject(new TaskDropped());
  };

  const job = (project: Project): Job => {
    const open = new Set<Entry>();
    let isDropped = false;
    const ask = (task: Task): Promise<Outcome> => {
      const done = new Promise<Outcome>((resolve, reject) => {
        if (isDropped) return reject(new TaskDropped());
        const ended = (tell: () => void): void => {
          open.delete(entry);
          tell();
        };
        const entry: Entry = {
          id: ++lastId,
          task,
          project,
          place: null,
          shouldStop: false,
          resolve: (outcome) => ended(() => resolve(outcome)),
          reject: (error) => ended(() => reject(error)),
        };
        open.add(entry);
        // What is done of one method is summed up before more is begun: it gives its memory back, and answers a stop.
        if (task.kind === 'merge') waiting.unshift(entry);
        else waiting.push(entry);
        startWaiting();
      });
      done.catch(() => {});
      return done;
    };
    return {
      // The outcome is of the kind that was asked for.
      do: ask as DoTask,
      stop() {
        for (const entry of open) {
          entry.shouldStop = true;
          if (entry.place?.entry === entry) entry.place.worker.tell({ say: 'stop', id: entry.id }, []);
        }
      },
      drop(which) {
        isDropped ||= which === undefined;
        // Those that wait first: otherwise they would be begun as those before them end.
        for (const entry of [...open].reverse()) if (which?.(entry.task) !== false) giveUp(entry);
        startWaiting();
      },
    };
  };

  return {
    size,
    job,
    async close() {
      isClosed = true;
      await Promise.all([...places].map(({ worker }) => worker.end?.()));
    },
  };
}
