/** Runs one method at a time, pausing between the engine's steps so that a word from the page is heard at once. */
import { runMethod } from '../../sim/run/run-method';
import type { FromWorker, Task, ToWorker } from './protocol';

/** How long the engine may work before it listens, ms; a cancel is obeyed within 100 ms. */
const LISTEN_EVERY_MS = 30;
const TELL_EVERY_MS = 100;

type Wish = 'go on' | 'stop' | 'drop';
interface Job {
  id: number;
  wish: Wish;
}

/** @returns what to do with each message from the page */
export function workLoop(tell: (message: FromWorker, transfer: Transferable[]) => void): (message: ToWorker) => void {
  let running: Job | null = null;
  let resume: (() => void) | null = null;
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => resume?.();

  /** Lets waiting messages in. A timer would cost four milliseconds each time, a message of one's own costs none. */
  const listen = (): Promise<void> =>
    new Promise((resolve) => {
      resume = resolve;
      port2.postMessage(null);
    });

  const run = async (job: Job, task: Task): Promise<void> => {
    const { id } = job;
    const startMs = performance.now();
    let heardMs = startMs;
    let toldMs = startMs;
    const isOverBudget = () => task.budgetMs !== undefined && performance.now() - startMs > task.budgetMs;
    const steps = runMethod(task.project, task.method, { shouldStop: () => job.wish !== 'go on' || isOverBudget() });
    for (let step = steps.next(); ; step = steps.next()) {
      if (job.wish === 'drop') return tell({ say: 'dropped', id }, []);
      if (step.done) {
        const { sample, prediction } = step.value;
        const elapsedMs = performance.now() - startMs;
        const buffers = new Set([sample.showGapMm.buffer, sample.otherwiseGoodShowGapMm.buffer]);
        const result = { ...step.value, prediction: { ...prediction, elapsedMs } };
        return tell({ say: 'result', id, result }, [...buffers]);
      }
      const nowMs = performance.now();
      if (nowMs - toldMs > TELL_EVERY_MS) {
        tell({ say: 'progress', id, progress: step.value }, []);
        toldMs = nowMs;
      }
      if (nowMs - heardMs > LISTEN_EVERY_MS) {
        await listen();
        heardMs = performance.now();
      }
    }
  };

  return (message) => {
    if (message.say === 'run') {
      const job: Job = { id: message.id, wish: 'go on' };
      running = job;
      run(job, message.task).catch((error: unknown) => {
        tell({ say: 'failed', id: job.id, sentence: error instanceof Error ? error.message : String(error) }, []);
      });
    } else if (running?.id === message.id) {
      running.wish = message.say;
    }
  };
}
