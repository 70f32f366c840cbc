/** The long questions about one method: what each asks, how many tasks it sets, and how their outcomes become the answer. */
import { BUDGET_TRIALS, budgetSources, type SourceBudget } from '../budget/budget';
import { SENSITIVITY_TRIALS, type SourceIndices, sourceIndices } from '../budget/source-sensitivity';
import { type AccuracyNeeded, accuracyAnswer, accuracySources } from '../decide/accuracy-needed';
import { aimSearch, aimTrials, type BestAim } from '../decide/aim';
import { HINGES_TOLD, type LeadHinges, leadHingesOf } from '../decide/hinges';
import { mostRounds, type TestValue, testValueOf } from '../decide/test-value';
import type { Project } from '../project/document';
import { blockCount, trialsInBlock } from '../run/block-loop';
import type { SingleRing } from '../run/single-ring';
import type { TouchExcess } from '../run/touch-excess';
import type { DoTask, RingOptions } from './tasks';

/** What each kind of question wants to know besides the method. */
export interface Asked {
  /** Where the gap comes from. Rings for every source, and for each sample behind the indices; a part of those if left out. */
  budget: { rings?: number; indexRings?: number };
  /** Which deliberate offset of the tilt makes most pieces good. */
  aim: RingOptions;
  /** How good each source would have to be for a share of good pieces, 0…1. */
  accuracy: { wanted: number } & RingOptions;
  /** What test cuts are worth. */
  testValue: RingOptions;
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

interface Row<Kind extends QuestionKind> {
  /** How many tasks `ask` sets at most, for the progress. */
  tasks: (project: Project, method: number, asked: Asked[Kind]) => number;
  ask: (doTask: DoTask, project: Project, method: number, asked: Asked[Kind]) => Promise<Answers[Kind]>;
}

/** Of the rings of the budget; each index takes two samples of them and one more for every source. */
const INDEX_PART = SENSITIVITY_TRIALS / BUDGET_TRIALS;

/** Rings of each sample behind the indices. */
export function indexRingsOf({ rings = BUDGET_TRIALS, indexRings }: Asked['budget']): number {
  return indexRings ?? Math.ceil(INDEX_PART * rings);
}

const ringOptions = ({ trials }: RingOptions): RingOptions => (trials === undefined ? {} : { trials });

export async function askBudget(
  doTask: DoTask,
  project: Project,
  method: number,
  { rings }: Asked['budget'],
): Promise<SourceBudget> {
  const sources = budgetSources(project, method);
  const options = rings === undefined ? {} : { trials: rings };
  const [all, ...without] = await Promise.all(
    [undefined, ...sources].map((source) => doTask({ kind: 'budgetRun', method, without: source, options })),
  );
  return doTask({
    kind: 'budgetOf',
    method,
    all: all!,
    without: new Map(sources.map((source, k) => [source, without[k]!])),
  });
}

const QUESTIONS: { readonly [Kind in QuestionKind]: Row<Kind> } = {
  budget: {
    tasks: (project, method, asked) => 2 + budgetSources(project, method).length + blockCount(indexRingsOf(asked)),
    async ask(doTask, project, method, asked) {
      const rings = indexRingsOf(asked);
      const [budget, ...samples] = await Promise.all([
        askBudget(doTask, project, method, asked),
        ...Array.from({ length: blockCount(rings) }, (_, block) =>
          doTask({ kind: 'sensitivity', method, block, rings: trialsInBlock(rings, block) }),
        ),
      ]);
      return { budget, indices: sourceIndices(budgetSources(project, method), samples) };
    },
  },
  aim: {
    tasks: aimTrials,
    async ask(doTask, project, method, asked) {
      const search = aimSearch(project, method, asked);
      let step = search.next();
      while (!step.done) {
        const runs = step.value.map((trial) => doTask({ kind: 'aimTrial', method, trial }));
        step = search.next(await Promise.all(runs));
      }
      return step.value;
    },
  },
  accuracy: {
    tasks: (project, method) => 2 + accuracySources(project, method).length,
    async ask(doTask, project, method, asked) {
      const options = ringOptions(asked);
      const question = { wanted: asked.wanted, yieldNow: await doTask({ kind: 'yieldAsItIs', method, options }) };
      const [balanced, ...answers] = await Promise.all([
        doTask({ kind: 'balanced', method, options, question }),
        ...accuracySources(project, method).map((source) =>
          doTask({ kind: 'sourceNeeded', method, options, source, question }),
        ),
      ]);
      return accuracyAnswer(question, answers, balanced, options);
    },
  },
  testValue: {
    tasks: (project, method) => 1 + mostRounds(project, method),
    async ask(doTask, project, method, asked) {
      const options = ringOptions(asked);
      const tried = Array.from({ length: 1 + mostRounds(project, method) }, (_, maxRounds) =>
        doTask({ kind: 'testRounds', method, maxRounds, options }),
      );
      return testValueOf(project, method, await Promise.all(tried), options);
    },
  },
  ring: {
    tasks: () => 1,
    ask: (doTask, _project, method, { ring }) => doTask({ kind: 'ring', method, ring }),
  },
  touchExcess: {
    tasks: () => 1,
    ask: async (doTask, _project, method) => ({ excess: await doTask({ kind: 'touchExcess', method }) }),
  },
  hinges: {
    tasks: (project, method) => 1 + accuracySources(project, method).length + HINGES_TOLD,
    async ask(doTask, project, leader, { rival }) {
      const pair = { leader, rival };
      const now = await doTask({ kind: 'leadNow', pair });
      if (!now.leads) return leadHingesOf(now, []);
      const doubled = await Promise.all(
        accuracySources(project, leader).map(async (source) => {
          return { source, lead: await doTask({ kind: 'leadWith', pair, source, factor: 2, now }) };
        }),
      );
      doubled.sort((a, b) => a.lead - b.lead);
      const told = doubled.slice(0, HINGES_TOLD);
      const found = await Promise.all(told.map(({ source }) => doTask({ kind: 'hinge', pair, source, now })));
      return leadHingesOf(now, found);
    },
  },
};

/** How many tasks a question sets at most. */
export function tasksOf(project: Project, method: number, question: Question): number {
  const row = QUESTIONS[question.kind] as Row<QuestionKind>;
  return row.tasks(project, method, question);
}

/** Sets the tasks of a question and merges what comes of them. */
export function ask<Kind extends QuestionKind>(
  doTask: DoTask,
  project: Project,
  method: number,
  question: Question<Kind>,
): Promise<Answers[Kind]> {
  const row = QUESTIONS[question.kind] as unknown as Row<Kind>;
  return row.ask(doTask, project, method, question as unknown as Asked[Kind]);
}
