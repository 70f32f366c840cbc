/** What a worker is asked to do for one method, and what it gives back. */
import { sourceBudget } from '../../sim/budget/budget';
import { type PieceCost, pieceCost, setUpsFor } from '../../sim/decide/cost';
import type { Project } from '../../sim/project/document';
import { type BlockResult, runBlock } from '../../sim/run/block';
import { finish, trialsInBlock } from '../../sim/run/block-loop';
import { type MethodPlan, methodPlan } from '../../sim/run/plan';
import type { BudgetLine } from '../../sim/run/prediction';

export type Task =
  | { kind: 'block'; method: number; block: number }
  | { kind: 'cost'; method: number }
  | { kind: 'budget'; method: number };

/** What each kind of task gives. */
export interface Outcomes {
  block: BlockResult;
  cost: PieceCost;
  budget: BudgetLine[];
}
export type Outcome = Outcomes[keyof Outcomes];

/** Does the tasks of one project, keeping the plan of the method it was last asked about. */
export function taskDoer(project: Project): (task: Task) => Outcome {
  const { trials, seed } = project.run;
  let planned = -1;
  let plan: MethodPlan | undefined;
  return (task) => {
    if (task.kind === 'budget') return finish(sourceBudget(project, task.method));
    if (plan === undefined || planned !== task.method) {
      plan = methodPlan(project, task.method);
      planned = task.method;
    }
    if (task.kind === 'cost') return pieceCost(plan, seed, setUpsFor(trials));
    return runBlock(plan, seed, task.block, trialsInBlock(trials, task.block));
  };
}
