/** Long questions answered in this thread, for tests that need an answer and no workers. */
import type { Project } from '../../sim/project/document';
import { type Answers, ask, type Question, type QuestionKind } from '../../sim/questions/questions';
import { type DoTask, taskDoer } from '../../sim/questions/tasks';
import { finish } from '../../sim/run/block-loop';

/** Does tasks at once, one after the other. */
export function doHere(project: Project): DoTask {
  const stepsOf = taskDoer(project, () => 0);
  // The outcome is of the task's kind.
  return (async (task) => finish(stepsOf(task, () => false))) as DoTask;
}

export function answerTo<Kind extends QuestionKind>(
  project: Project,
  method: number,
  question: Question<Kind>,
): Promise<Answers[Kind]> {
  return ask(doHere(project), project, method, question);
}
