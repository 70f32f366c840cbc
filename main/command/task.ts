/** What a worker is asked to do for one method, and what it gives back. */
import { type BudgetRun, budgetRun } from '../../sim/budget/budget';
import type { GroupedSample } from '../../sim/budget/sobol';
import { sensitivitySampler } from '../../sim/budget/source-sensitivity';
import {
  type AccuracyQuestion,
  type BalancedFactor,
  balancedFactors,
  type SourceAnswer,
  sourceNeeded,
  yieldAsItIs,
} from '../../sim/decide/accuracy-needed';
import { type BestAim, bestAim } from '../../sim/decide/aim';
import { type TestValue, testValue } from '../../sim/decide/test-value';
import type { Project, SourceName } from '../../sim/project/document';
import { runBlock } from '../../sim/run/block';
import { finish, trialsInBlock } from '../../sim/run/block-loop';
import type { BlockResult } from '../../sim/run/block-result';
import { type PieceCost, pieceCost, setUpsFor } from '../../sim/run/cost';
import { mergeBlocks } from '../../sim/run/merge';
import { type MethodPlan, methodPlan } from '../../sim/run/plan';
import type { MethodResult, StopReason } from '../../sim/run/prediction';
import type { RunOptions } from '../../sim/run/run-method';

/** Rings, where they are not to be as many as the question takes by itself. */
export type TaskOptions = Pick<RunOptions, 'trials'>;

interface Asked {
  method: number;
  options: TaskOptions;
}

export type Task =
  | { kind: 'block'; method: number; block: number }
  | { kind: 'cost'; method: number }
  | { kind: 'merge'; method: number; blocks: readonly BlockResult[]; stopReason: StopReason; cost: PieceCost }
  | ({ kind: 'budgetRun'; without: SourceName | undefined } & Asked)
  | ({ kind: 'sensitivity'; block: number; rings: number } & Asked)
  | ({ kind: 'testValue' } & Asked)
  | ({ kind: 'aim' } & Asked)
  | ({ kind: 'yieldAsItIs' } & Asked)
  | ({ kind: 'sourceNeeded'; source: SourceName; question: AccuracyQuestion } & Asked)
  | ({ kind: 'balanced'; question: AccuracyQuestion } & Asked);

/** What each kind of task gives. */
export interface Outcomes {
  block: BlockResult;
  cost: PieceCost;
  merge: MethodResult;
  budgetRun: BudgetRun;
  sensitivity: GroupedSample;
  testValue: TestValue;
  aim: BestAim;
  yieldAsItIs: number;
  sourceNeeded: SourceAnswer;
  balanced: BalancedFactor[] | null;
}
export type Outcome = Outcomes[keyof Outcomes];

/** Whoever does the tasks of a project: worker threads, or this thread where threads are not worth it. */
export interface TaskRunner {
  /**
   * Tasks are begun in the order in which they are asked for. A failure no one waits for any more is let go; it has
   * reached whoever waits for the run.
   */
  do<Kind extends keyof Outcomes>(task: Task & { kind: Kind }): Promise<Outcomes[Kind]>;
  close(): Promise<void>;
}

/** Does the tasks of one project, making the plan of each method once. */
export function taskDoer(project: Project): (task: Task) => Outcome {
  const { trials, seed } = project.run;
  const plans = new Map<number, MethodPlan>();
  const planOf = (method: number): MethodPlan => {
    const plan = plans.get(method) ?? methodPlan(project, method);
    plans.set(method, plan);
    return plan;
  };
  return (task) => {
    switch (task.kind) {
      case 'block':
        return runBlock(planOf(task.method), seed, task.block, trialsInBlock(trials, task.block));
      case 'cost':
        return pieceCost(planOf(task.method), seed, setUpsFor(trials));
      case 'merge':
        return mergeBlocks(planOf(task.method), task.blocks, task.stopReason, task.cost);
      case 'budgetRun':
        return budgetRun(project, task.method, task.without, task.options);
      case 'sensitivity':
        return sensitivitySampler(project, task.method, task.options).sample(task.block, task.rings);
      case 'testValue':
        return finish(testValue(project, task.method, task.options));
      case 'aim':
        return finish(bestAim(project, task.method, task.options));
      case 'yieldAsItIs':
        return yieldAsItIs(project, task.method, task.options);
      case 'sourceNeeded':
        return sourceNeeded(project, task.method, task.source, task.question, task.options);
      case 'balanced':
        return balancedFactors(project, task.method, task.question, task.options);
    }
  };
}
