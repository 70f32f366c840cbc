/** What the page and its simulation workers say to each other. One worker does one thing at a time; what it is to drop ends at its next pause. */
import type { Project } from '../../sim/project/document';
import type { MethodResult, RunProgress } from '../../sim/run/prediction';
import type { Answered, Question, QuestionKind, QuestionProgress } from './questions';

export interface Task {
  project: Project;
  /** Indices of the methods to run, one after the other: short runs together do not wait for the page in between. */
  methods: readonly number[];
  /** Set-ups that are costed for each; left out: as many as go with its rings. */
  setUps?: number;
  /** Stop each after so many milliseconds with what is done by then. */
  budgetMs?: number;
}

export interface QuestionTask<Kind extends QuestionKind = QuestionKind> {
  project: Project;
  /** Index of the method asked about. */
  method: number;
  question: Question<Kind>;
}

/** `stop` keeps the rings done so far as the result, a question has nothing to keep; `drop` throws them away, and nothing more is heard of it. */
export type ToWorker =
  | { say: 'run'; id: number; task: Task }
  | { say: 'ask'; id: number; task: QuestionTask }
  | { say: 'stop'; id: number }
  | { say: 'drop'; id: number };

export type FromWorker =
  | { say: 'progress'; id: number; progress: RunProgress }
  /** No further ring is made; the results follow when those done are summed up. */
  | { say: 'stopped'; id: number }
  /** In the order of the task's methods; after a stop those not begun are missing. */
  | { say: 'results'; id: number; results: MethodResult[] }
  | { say: 'question progress'; id: number; progress: QuestionProgress }
  | { say: 'answer'; id: number; answered: Answered }
  | { say: 'failed'; id: number; sentence: string };
