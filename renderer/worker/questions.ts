/** The questions about one method that take longer than a redraw, each as steps that tell how far it has come. */
import { BUDGET_TRIALS, type SourceBudget, sourceBudget } from '../../sim/budget/budget';
import { SENSITIVITY_TRIALS, type SourceIndices, sourceSensitivity } from '../../sim/budget/source-sensitivity';
import { type AccuracyNeeded, accuracyNeeded } from '../../sim/decide/accuracy-needed';
import { type BestAim, bestAim } from '../../sim/decide/aim';
import { type LeadHinges, leadHinges } from '../../sim/decide/hinges';
import { type TestValue, testValue } from '../../sim/decide/test-value';
import type { Project } from '../../sim/project/document';
import { type SingleRing, singleRing } from '../../sim/run/single-ring';
import { type TouchExcess, touchExcess } from '../../sim/run/touch-excess';

/** What each kind of question wants to know besides the method. */
export interface Asked {
  /** Where the gap comes from, from so many rings for every source. */
  budget: { rings: number };
  /** Which deliberate offset of the tilt makes most pieces good. */
  aim: object;
  /** How good each source would have to be for a share of good pieces, 0…1. */
  accuracy: { wanted: number };
  /** What test cuts are worth. */
  testValue: object;
  /** One ring of the run by its number, from 0. */
  ring: { ring: number };
  /** How far the quick rule is off. */
  touchExcess: object;
  /** What the method's lead over another, by its place in the project, hinges on. */
  hinges: { rival: number };
}

export interface BudgetAnswer {
  budget: SourceBudget;
  indices: SourceIndices[];
}

export interface Answers {
  budget: BudgetAnswer;
  aim: BestAim;
  accuracy: AccuracyNeeded;
  testValue: TestValue;
  ring: SingleRing;
  /** `excess` is null where the method is closed by one rule only. */
  touchExcess: { excess: TouchExcess | null };
  hinges: LeadHinges;
}

export type QuestionKind = keyof Asked;
type AnyQuestion = { [Kind in QuestionKind]: { kind: Kind } & Asked[Kind] }[QuestionKind];
export type Question<Kind extends QuestionKind = QuestionKind> = Extract<AnyQuestion, { kind: Kind }>;
export type Answered = { [Kind in QuestionKind]: { kind: Kind; answer: Answers[Kind] } }[QuestionKind];

/** Steps done of those expected; `wanted` is null where nobody knows beforehand. */
export interface QuestionProgress {
  done: number;
  wanted: number | null;
}

type Steps<Result> = Generator<QuestionProgress, Result, void>;

/** Answers `question` about one method, pausing after every step. */
export function* answerSteps(project: Project, method: number, question: Question): Steps<Answered> {
  switch (question.kind) {
    case 'budget':
      return { kind: 'budget', answer: yield* budgetSteps(project, method, question.rings) };
    case 'aim':
      return { kind: 'aim', answer: yield* counted(bestAim(project, method)) };
    case 'accuracy':
      return { kind: 'accuracy', answer: yield* counted(accuracyNeeded(project, method, question.wanted)) };
    case 'testValue':
      return { kind: 'testValue', answer: yield* counted(testValue(project, method)) };
    case 'ring':
      return { kind: 'ring', answer: singleRing(project, method, question.ring) };
    case 'touchExcess':
      return { kind: 'touchExcess', answer: { excess: touchExcess(project, method) } };
    case 'hinges':
      return { kind: 'hinges', answer: yield* counted(leadHinges(project, method, question.rival)) };
  }
}

function* counted<Result>(steps: Generator<unknown, Result, void>): Steps<Result> {
  for (let done = 0; ; done++) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { done: done + 1, wanted: null };
  }
}

/** Of the rings of the budget; each index takes two samples of them and one more for every source. */
const INDEX_PART = SENSITIVITY_TRIALS / BUDGET_TRIALS;

function* budgetSteps(project: Project, method: number, rings: number): Steps<BudgetAnswer> {
  const perfect = sourceBudget(project, method, { trials: rings });
  let step = perfect.next();
  let sources = 0;
  for (; !step.done; step = perfect.next()) {
    sources = step.value.sourcesWanted;
    // The indices take about half as long again.
    yield { done: step.value.sourcesDone, wanted: Math.ceil(1.5 * sources) };
  }
  const indices = sourceSensitivity(project, method, { trials: Math.ceil(INDEX_PART * rings) });
  let index = indices.next();
  for (; !index.done; index = indices.next())
    yield { done: Math.ceil(1.25 * sources), wanted: Math.ceil(1.5 * sources) };
  return { budget: step.value, indices: index.value };
}
