/** A worker's side: does one task at a time, pausing between the engine's steps so that a stop or a drop is heard at once. */
import type { Project } from '../project/document';
import { buffersIn } from './buffers';
import { type Outcome, type Task, taskDoer } from './tasks';

/** `project` is left out where it is that of the task before. `stop` ends a task with what is done, `drop` without an outcome. */
export type ToWorker =
  | { say: 'do'; id: number; task: Task; project?: Project }
  | { say: 'stop'; id: number }
  | { say: 'drop'; id: number };

export type FromWorker =
  | { say: 'done'; id: number; outcome: Outcome }
  | { say: 'failed'; id: number; sentence: string };

/** How long the engine may work before it listens, ms: a figure that changed waits no longer for the work of before. */
const LISTEN_EVERY_MS = 5;

export interface Surroundings {
  /** The buffers are handed over, not copied. */
  tell: (message: FromWorker, handedOver: ArrayBuffer[]) => void;
  /** Resolves when the messages that wait have been heard. */
  listen: () => Promise<void>;
  nowMs: () => number;
}

interface Job {
  id: number;
  wish: 'go on' | 'stop' | 'drop';
}

/** @returns what to do with each message */
export function workLoop({ tell, listen, nowMs }: Surroundings): (message: ToWorker) => void {
  let running: Job | null = null;
  let doTask: ReturnType<typeof taskDoer> | null = null;

  const work = async (job: Job, task: Task): Promise<void> => {
    if (!doTask) throw new Error('A task came before its project.');
    const steps = doTask(task, () => job.wish !== 'go on');
    let heardMs = nowMs();
    for (let step = steps.next(); ; step = steps.next()) {
      if (job.wish === 'drop') return;
      if (step.done) return tell({ say: 'done', id: job.id, outcome: step.value }, buffersIn(step.value));
      if (nowMs() - heardMs > LISTEN_EVERY_MS) {
        await listen();
        heardMs = nowMs();
      }
    }
  };

  return (message) => {
    if (message.say === 'do') {
      const job: Job = { id: message.id, wish: 'go on' };
      running = job;
      if (message.project) doTask = taskDoer(message.project, nowMs);
      work(job, message.task).catch((error: unknown) => {
        tell({ say: 'failed', id: job.id, sentence: error instanceof Error ? error.message : String(error) }, []);
      });
    } else if (running?.id === message.id) {
      running.wish = message.say;
    }
  };
}
