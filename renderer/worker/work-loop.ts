/** Runs one method at a time, pausing between the engine's steps so that a word from the page is heard at once. */
import type { MethodResult } from '../../sim/run/prediction';
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

/**
 * @param listen resolves when the messages that wait have been heard
 * @returns what to do with each message from the page
 */
export function workLoop(
  tell: (message: FromWorker, transfer: Transferable[]) => void,
  listen: () => Promise<void>,
): (message: ToWorker) => void {
  let running: Job | null = null;

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
        const elapsedMs = performance.now() - startMs;
        const result = { ...step.value, prediction: { ...step.value.prediction, elapsedMs } };
        return tell({ say: 'result', id, result }, buffersOf(result));
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

/** The large lists of a result, handed over instead of copied. */
function buffersOf({ sample, byRing, setUps }: MethodResult): Transferable[] {
  const lists = [
    sample.showGapMm,
    sample.otherwiseGoodShowGapMm,
    byRing.showGapMm,
    byRing.good,
    setUps.money,
    setUps.pieces,
  ];
  return [...new Set(lists.map(({ buffer }) => buffer))];
}
