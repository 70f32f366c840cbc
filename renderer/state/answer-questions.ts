/**
 * Works out what the panels on the screen ask. A question that no panel shows any more is dropped at once; a long one
 * starts when the rings themselves are done and the hand rests.
 */
import { askPool, type RunningQuestion } from '../../sim/questions/ask-pool';
import type { QuestionKind } from '../../sim/questions/questions';
import { TaskFailed, type TaskPool } from '../../sim/questions/task-pool';
import {
  keepAnswer,
  keepQuestionFailure,
  noteDropped,
  noteProgress,
  useQuestions,
  type WantedQuestion,
} from './question-store';
import { useRun } from './run-store';

const HAND_RESTS_MS = 300;
const QUICK: readonly QuestionKind[] = ['ring'];
/** Of the long ones that are open together, what answers a page's question goes first. */
const FIRST: readonly QuestionKind[] = ['budget', 'testValue'];

interface Pools {
  long: TaskPool;
  /** For what is answered within a redraw. */
  quick: TaskPool;
}

export function answerQuestions(pools: Pools): void {
  const running = new Map<string, RunningQuestion<QuestionKind>>();
  let timer: ReturnType<typeof setTimeout> | undefined;

  const isQuick = ({ question }: WantedQuestion): boolean => QUICK.includes(question.kind);

  const isOpen = (key: string): boolean => {
    const { answers, questionFailures, questionsStopped, questionsWanted } = useQuestions.getState();
    return (
      questionsWanted.has(key) &&
      !answers.has(key) &&
      !questionFailures.has(key) &&
      !questionsStopped.has(key) &&
      !running.has(key)
    );
  };

  const start = async (key: string, wanted: WantedQuestion): Promise<void> => {
    const pool = isQuick(wanted) ? pools.quick : pools.long;
    const { project, method, question } = wanted;
    const asked: RunningQuestion<QuestionKind> = askPool(pool, project, method, question, (progress) => {
      if (running.get(key) === asked) noteProgress(key, progress);
    });
    running.set(key, asked);
    noteProgress(key, null);
    try {
      const answer = await asked.answer;
      if (running.get(key) === asked) running.delete(key);
      if (answer) keepAnswer(key, wanted, answer);
    } catch (error) {
      if (running.get(key) === asked) running.delete(key);
      if (!(error instanceof TaskFailed)) throw error;
      keepQuestionFailure(key, error.message);
    }
  };

  const startOpen = (which: (wanted: WantedQuestion) => boolean): void => {
    const open = [...useQuestions.getState().questionsWanted].filter(([key, wanted]) => which(wanted) && isOpen(key));
    const isFirst = ([, { question }]: (typeof open)[number]): boolean => FIRST.includes(question.kind);
    for (const [key, wanted] of [...open.filter(isFirst), ...open.filter((one) => !isFirst(one))]) {
      void start(key, wanted);
    }
  };

  const dropUnwanted = (): void => {
    const { questionsWanted, questionsStopped } = useQuestions.getState();
    for (const [key, asked] of [...running]) {
      if (questionsWanted.has(key) && !questionsStopped.has(key)) continue;
      running.delete(key);
      asked.drop();
      noteDropped(key);
    }
  };

  const look = (): void => {
    clearTimeout(timer);
    dropUnwanted();
    startOpen(isQuick);
    timer = setTimeout(() => {
      if (useRun.getState().work === null) startOpen((wanted) => !isQuick(wanted));
    }, HAND_RESTS_MS);
  };

  useQuestions.subscribe((now, before) => {
    if (now.questionsWanted !== before.questionsWanted || now.questionsStopped !== before.questionsStopped) look();
  });
  useRun.subscribe((now, before) => {
    if ((now.work === null) !== (before.work === null)) look();
  });
}
