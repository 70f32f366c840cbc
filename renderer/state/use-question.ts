/** Asks a question about one method for as long as the panel that shows the answer is on the screen. */
import { useEffect } from 'react';
import type { QuestionProgress } from '../../sim/questions/ask-pool';
import type { Answers, Question, QuestionKind } from '../../sim/questions/questions';
import {
  answerPlace,
  askAgain,
  questionKey,
  stopQuestion,
  unwantQuestion,
  useQuestions,
  wantQuestion,
} from './question-store';
import { useShownProject } from './shown-project';

/** `waiting`: until the rings are done. */
export type QuestionStanding = 'waiting' | 'working' | 'answered' | 'stopped' | 'failed';

export interface QuestionOutcome<Answer> {
  /** null before anything is known. */
  answer: Answer | null;
  /** Whether the answer is for the project as it stands; an older one is shown softened. */
  isFresh: boolean;
  standing: QuestionStanding;
  /** null unless it is being worked on and has said how far it has come. */
  progress: QuestionProgress | null;
  /** Why there is no answer. */
  failure: string | null;
  stop: () => void;
  /** Takes it up again after a stop or a failure. */
  goOn: () => void;
}

/** The answer as far as it is known; nothing is asked while `question` is null. */
export function useQuestion<Kind extends QuestionKind>(
  question: Question<Kind> | null,
  method: number,
): QuestionOutcome<Answers[Kind]> {
  const project = useShownProject();
  const key = question ? questionKey(project, method, question) : '';
  const place = question ? answerPlace(project, method, question) : '';
  const isAsked = question !== null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says all that the answer follows from.
  useEffect(() => {
    if (!isAsked) return;
    wantQuestion(key, { project, method, question });
    return () => unwantQuestion(key);
  }, [key, isAsked]);

  const fresh = useQuestions((state) => state.answers.get(key));
  const last = useQuestions((state) => state.lastAnswers.get(place));
  const isWorking = useQuestions((state) => state.questionsRunning.has(key));
  const progress = useQuestions((state) => state.questionsRunning.get(key) ?? null);
  const failure = useQuestions((state) => state.questionFailures.get(key) ?? null);
  const isStopped = useQuestions((state) => state.questionsStopped.has(key));
  return {
    // A key or a place holds only answers of its own kind.
    answer: (fresh ?? last ?? null) as Answers[Kind] | null,
    isFresh: fresh !== undefined,
    standing: standingOf(),
    progress,
    failure,
    stop: () => stopQuestion(key),
    goOn: () => askAgain(key),
  };

  function standingOf(): QuestionStanding {
    if (fresh !== undefined) return 'answered';
    if (failure !== null) return 'failed';
    if (isStopped) return 'stopped';
    return isWorking ? 'working' : 'waiting';
  }
}
