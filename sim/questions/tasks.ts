/**
 * The tasks that long questions are split into, each done by one worker in steps. A task and its outcome are plain data
 * and flat arrays, so that they travel between threads.
 */
import { type BudgetRun, budgetOf, budgetRun, type SourceBudget } from '../budget/budget';
import type { GroupedSample } from '../budget/sobol';
import { sensitivitySampler } from '../budget/source-sensitivity';
import {
  type AccuracyQuestion,
  type BalancedFactor,
  balancedFactors,
  type SourceAnswer,
  sourceNeeded,
  yieldAsItIs,
} from '../decide/accuracy-needed';
import { type AimTrial, tryAim } from '../decide/aim';
import { type FoundHinge, hingeOf, type LeadNow, type LeadPair, leadNow, leadWith } from '../decide/hinges';
import { type RoundsTried, testRounds } from '../decide/test-value';
import type { Project, SourceName } from '../project/document';
import { blockSteps } from '../run/block';
import { trialsInBlock } from '../run/block-loop';
import type { BlockResult } from '../run/block-result';
import { type PieceCost, pieceCostSteps, setUpsFor } from '../run/cost';
import { mergeSteps } from '../run/merge';
import { type MethodPlan, methodPlan } from '../run/plan';
import type { MethodResult, StopReason } from '../run/prediction';
import { type RunOptions, runMethod } from '../run/run-method';
import type { ShortRun } from '../run/short-run';
import { type SingleRing, singleRing } from '../run/single-ring';
import { type TouchExcess, touchExcess } from '../run/touch-excess';

/** Rings, where they are not to be as many as the question takes by itself. */
export type RingOptions = Pick<RunOptions, 'trials'>;

interface OfMethod {
  method: number;
}

interface Asked extends OfMethod {
  options: RingOptions;
}

/** What each kind of task has to know. */
interface Wishes {
  /** One block of a method's run. */
  block: OfMethod & { block: number };
  cost: OfMethod;
  /** All blocks of a run, in order, summed up. */
  merge: OfMethod & { blocks: readonly BlockResult[]; stopReason: StopReason; cost: PieceCost };
  /** Several methods one after the other, each ended after so many milliseconds with what is done by then. */
  preview: { methods: readonly number[]; setUps: number; budgetMs: number };
  budgetRun: Asked & { without: SourceName | undefined };
  /** The runs of a budget, with all sources and without each, summed up. */
  budgetOf: OfMethod & { all: BudgetRun; without: ReadonlyMap<SourceName, BudgetRun> };
  sensitivity: OfMethod & { block: number; rings: number };
  yieldAsItIs: Asked;
  sourceNeeded: Asked & { source: SourceName; question: AccuracyQuestion };
  balanced: Asked & { question: AccuracyQuestion };
  aimTrial: OfMethod & { trial: AimTrial };
  testRounds: Asked & { maxRounds: number };
  ring: OfMethod & { ring: number };
  touchExcess: OfMethod;
  leadNow: { pair: LeadPair };
  leadWith: { pair: LeadPair; source: SourceName; factor: number; now: LeadNow };
  hinge: { pair: LeadPair; source: SourceName; now: LeadNow };
}

/** What each kind of task gives. */
export interface Outcomes {
  block: BlockResult;
  cost: PieceCost;
  merge: MethodResult;
  /** In the order of the task's methods; after a stop those not begun are missing. */
  preview: MethodResult[];
  budgetRun: BudgetRun;
  budgetOf: SourceBudget;
  sensitivity: GroupedSample;
  yieldAsItIs: number;
  sourceNeeded: SourceAnswer;
  balanced: BalancedFactor[] | null;
  aimTrial: ShortRun;
  testRounds: RoundsTried;
  ring: SingleRing;
  touchExcess: TouchExcess | null;
  leadNow: LeadNow;
  leadWith: number;
  hinge: FoundHinge | null;
}

export type TaskKind = keyof Wishes;
export type Task = { [Kind in TaskKind]: { kind: Kind } & Wishes[Kind] }[TaskKind];
export type Outcome = Outcomes[TaskKind];

/** Hands a task to whoever does it; tasks are begun in the order in which they are asked for. */
export type DoTask = <Kind extends TaskKind>(task: Task & { kind: Kind }) => Promise<Outcomes[Kind]>;

/** What a task is done with. */
export interface Desk {
  project: Project;
  /** Made once for each method. */
  planOf: (method: number) => MethodPlan;
  /** Whether what is done by now must do; only a few kinds have something to keep. */
  shouldStop: () => boolean;
  nowMs: () => number;
}

type Row<Kind extends TaskKind> = (
  task: Extract<Task, { kind: Kind }>,
  desk: Desk,
) => Generator<unknown, Outcomes[Kind], void>;

/** Work that pauses nowhere. */
function inOneGo<Wish, Result>(
  work: (wish: Wish, project: Project) => Result,
): (wish: Wish, desk: Desk) => Generator<unknown, Result, void> {
  // biome-ignore lint/correctness/useYield: there is nothing to pause for.
  return function* (wish, { project }) {
    return work(wish, project);
  };
}

const TASKS: { readonly [Kind in TaskKind]: Row<Kind> } = {
  block: ({ method, block }, { project: { run }, planOf }) =>
    blockSteps(planOf(method), run.seed, block, trialsInBlock(run.trials, block)),
  cost: ({ method }, { project: { run }, planOf, shouldStop }) =>
    pieceCostSteps(planOf(method), run.seed, setUpsFor(run.trials), shouldStop),
  merge: ({ method, blocks, stopReason, cost }, { planOf }) => mergeSteps(planOf(method), blocks, stopReason, cost),
  *preview({ methods, setUps, budgetMs }, { project, shouldStop, nowMs }) {
    const results: MethodResult[] = [];
    for (const method of methods) {
      if (shouldStop() && results.length > 0) break;
      const startMs = nowMs();
      const isOver = () => shouldStop() || nowMs() - startMs > budgetMs;
      const result = yield* runMethod(project, method, { setUps, shouldStop: isOver });
      results.push(result);
    }
    return results;
  },
  budgetRun: inOneGo(({ method, without, options }, project) => budgetRun(project, method, without, options)),
  budgetOf: inOneGo(({ method, all, without }, project) => budgetOf(project, method, all, without)),
  sensitivity: inOneGo(({ method, block, rings }, project) => sensitivitySampler(project, method).sample(block, rings)),
  yieldAsItIs: inOneGo(({ method, options }, project) => yieldAsItIs(project, method, options)),
  sourceNeeded: inOneGo(({ method, source, question, options }, project) =>
    sourceNeeded(project, method, source, question, options),
  ),
  balanced: inOneGo(({ method, question, options }, project) => balancedFactors(project, method, question, options)),
  aimTrial: inOneGo(({ method, trial }, project) => tryAim(project, method, trial)),
  testRounds: inOneGo(({ method, maxRounds, options }, project) => testRounds(project, method, maxRounds, options)),
  ring: inOneGo(({ method, ring }, project) => singleRing(project, method, ring)),
  touchExcess: inOneGo(({ method }, project) => touchExcess(project, method)),
  leadNow: inOneGo(({ pair }, project) => leadNow(project, pair)),
  leadWith: inOneGo(({ pair, source, factor, now }, project) => leadWith(project, pair, source, factor, now)),
  hinge: inOneGo(({ pair, source, now }, project) => hingeOf(project, pair, source, now)),
};

/** These pause every few rings; a worker at any other can only be ended in the middle of it. */
const PAUSES_OFTEN: readonly TaskKind[] = ['block', 'cost', 'merge', 'preview'];

export function pausesOften({ kind }: Task): boolean {
  return PAUSES_OFTEN.includes(kind);
}

export type TaskSteps = Generator<unknown, Outcome, void>;

/** Does the tasks of one project in steps. */
export function taskDoer(project: Project, nowMs: () => number): (task: Task, shouldStop: () => boolean) => TaskSteps {
  const plans = new Map<number, MethodPlan>();
  const planOf = (method: number): MethodPlan => {
    const plan = plans.get(method) ?? methodPlan(project, method);
    plans.set(method, plan);
    return plan;
  };
  return (task, shouldStop) => {
    const row = TASKS[task.kind] as (task: Task, desk: Desk) => TaskSteps;
    return row(task, { project, planOf, shouldStop, nowMs });
  };
}
