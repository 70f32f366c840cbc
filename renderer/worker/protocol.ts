/** What the page and its simulation workers say to each other. One worker runs one task at a time. */
import type { Project } from '../../sim/project/document';
import type { MethodResult, RunProgress } from '../../sim/run/prediction';

export interface Task {
  project: Project;
  /** Index of the method to run. */
  method: number;
  /** Stop after so many milliseconds with what is done by then. */
  budgetMs?: number;
}

/** `stop` keeps the rings done so far as the result; `drop` throws them away. */
export type ToWorker =
  | { say: 'run'; id: number; task: Task }
  | { say: 'stop'; id: number }
  | { say: 'drop'; id: number };

export type FromWorker =
  | { say: 'progress'; id: number; progress: RunProgress }
  | { say: 'result'; id: number; result: MethodResult }
  | { say: 'dropped'; id: number }
  | { say: 'failed'; id: number; sentence: string };
