/** Runs one method at a time, pausing between the engine's steps so that a word from the page is heard at once. */
import { runMethod } from '../../sim/run/run-method';
import type { FromWorker, Task, ToWorker } from './protocol';

/** How long the engine may work before the worker listens, ms; a cancel is obeyed within 100 ms. */
const LISTEN_EVERY_MS = 30;
const TELL_EVERY_MS = 100;

type Wish = 'go on' | 'stop' | 'drop';
let running: { id: number; wish: Wish } | null = null;

function tell(message: FromWorker, transfer: Transferable[] = []): void {
  postMessage(message, { transfer });
}

const { port1, port2 } = new MessageChannel();
let resume: (() => void) | null = null;
port1.onmessage = () => resume?.();

/** Lets waiting messages in. A timer would cost four milliseconds each time, a message of one's own costs none. */
function listen(): Promise<void> {
  return new Promise((resolve) => {
    resume = resolve;
    port2.postMessage(null);
  });
}

async function run(id: number, task: Task): Promise<void> {
  const job: { id: number; wish: Wish } = { id, wish: 'go on' };
  running = job;
  const startMs = performance.now();
  let heardMs = startMs;
  let toldMs = startMs;
  const isOverBudget = () => task.budgetMs !== undefined && performance.now() - startMs > task.budgetMs;
  const steps = runMethod(task.project, task.method, { shouldStop: () => job.wish !== 'go on' || isOverBudget() });
  for (let step = steps.next(); ; step = steps.next()) {
    if (job.wish === 'drop') {
      tell({ say: 'dropped', id });
      return;
    }
    if (step.done) {
      const { sample, prediction } = step.value;
      const elapsedMs = performance.now() - startMs;
      tell({ say: 'result', id, result: { ...step.value, prediction: { ...prediction, elapsedMs } } }, [
        ...new Set([sample.showGapMm.buffer, sample.otherwiseGoodShowGapMm.buffer]),
      ]);
      return;
    }
    const nowMs = performance.now();
    if (nowMs - toldMs > TELL_EVERY_MS) {
      tell({ say: 'progress', id, progress: step.value });
      toldMs = nowMs;
    }
    if (nowMs - heardMs > LISTEN_EVERY_MS) {
      await listen();
      heardMs = performance.now();
    }
  }
}

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.say === 'run') {
    run(data.id, data.task).catch((error: unknown) => {
      tell({ say: 'failed', id: data.id, sentence: error instanceof Error ? error.message : String(error) });
    });
  } else if (running?.id === data.id) {
    running.wish = data.say;
  }
});
