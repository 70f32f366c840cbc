/** Works on one thing at a time, pausing between the engine's steps so that a word from the page is heard at once. */
import type { MethodResult } from '../../sim/run/prediction';
import { runMethod } from '../../sim/run/run-method';
import type { FromWorker, QuestionTask, Task, ToWorker } from './protocol';
import { answerSteps } from './questions';

/** How long the engine may work before it listens, ms: a figure that changed waits no longer for the work of before. */
const LISTEN_EVERY_MS = 5;
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

  /** Takes the steps to their end; null when the job was dropped on the way. */
  const drive = async <Progress, Result>(
    job: Job,
    steps: Generator<Progress, Result, void>,
    tellProgress: (progress: Progress) => void,
  ): Promise<{ value: Result } | null> => {
    let heardMs = performance.now();
    let toldMs = heardMs;
    for (let step = steps.next(); ; step = steps.next()) {
      if (job.wish === 'drop') return null;
      if (step.done) return { value: step.value };
      const nowMs = performance.now();
      if (nowMs - toldMs > TELL_EVERY_MS) {
        tellProgress(step.value);
        toldMs = nowMs;
      }
      if (nowMs - heardMs > LISTEN_EVERY_MS) {
        const before = job.wish;
        await listen();
        if (job.wish === 'stop' && before !== 'stop') tell({ say: 'stopped', id: job.id }, []);
        heardMs = performance.now();
      }
    }
  };

  const run = async (job: Job, task: Task): Promise<void> => {
    const { id } = job;
    const results: MethodResult[] = [];
    for (const method of task.methods) {
      if (job.wish === 'stop' && results.length > 0) break;
      const startMs = performance.now();
      const isOverBudget = () => task.budgetMs !== undefined && performance.now() - startMs > task.budgetMs;
      const steps = runMethod(task.project, method, {
        shouldStop: () => job.wish !== 'go on' || isOverBudget(),
        ...(task.setUps !== undefined && { setUps: task.setUps }),
      });
      const done = await drive(job, steps, (progress) => tell({ say: 'progress', id, progress }, []));
      if (!done) return;
      results.push(done.value);
    }
    tell({ say: 'results', id, results }, results.flatMap(buffersOf));
  };

  const ask = async (job: Job, { project, method, question }: QuestionTask): Promise<void> => {
    const { id } = job;
    const steps = answerSteps(project, method, question);
    const done = await drive(job, steps, (progress) => tell({ say: 'question progress', id, progress }, []));
    if (done) tell({ say: 'answer', id, answered: done.value }, []);
  };

  return (message) => {
    if (message.say === 'run' || message.say === 'ask') {
      const job: Job = { id: message.id, wish: 'go on' };
      running = job;
      const work = message.say === 'run' ? run(job, message.task) : ask(job, message.task);
      work.catch((error: unknown) => {
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
    ...Object.values(byRing),
    setUps.money,
    setUps.pieces,
  ];
  return [...new Set(lists.map(({ buffer }) => buffer))];
}
