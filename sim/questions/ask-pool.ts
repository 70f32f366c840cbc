/** A question put to a pool of workers. */
import type { Project } from '../project/document';
import { type Answers, ask, type Question, type QuestionKind, tasksOf } from './questions';
import { TaskDropped, type TaskPool } from './task-pool';
import type { DoTask } from './tasks';

/** Tasks done of those expected. */
export interface QuestionProgress {
  done: number;
  wanted: number;
}

export interface RunningQuestion<Kind extends QuestionKind> {
  /** Resolves with null when the question was dropped; rejects with TaskFailed. */
  answer: Promise<Answers[Kind] | null>;
  drop: () => void;
}

export function askPool<Kind extends QuestionKind>(
  pool: TaskPool,
  project: Project,
  method: number,
  question: Question<Kind>,
  onProgress: (progress: QuestionProgress) => void = () => {},
): RunningQuestion<Kind> {
  const job = pool.job(project);
  const answered = async (): Promise<Answers[Kind]> => {
    const wanted = tasksOf(project, method, question);
    let done = 0;
    const doTask: DoTask = async (task) => {
      const outcome = await job.do(task);
      onProgress({ done: ++done, wanted });
      return outcome;
    };
    return ask(doTask, project, method, question);
  };
  const answer = answered().catch((error: unknown) => {
    // One failure is the question's; what else was asked for it is of no use.
    job.drop();
    if (error instanceof TaskDropped) return null;
    throw error;
  });
  return { answer, drop: () => job.drop() };
}
