/** What a worker is asked to do for one method, and what it gives back. */
import { pieceCost, setUpsFor } from '../../sim/decide/cost';
import type { Project } from '../../sim/project/document';
import { type BlockResult, runBlock } from '../../sim/run/block';
import { trialsInBlock } from '../../sim/run/block-loop';
import { type MethodPlan, methodPlan } from '../../sim/run/plan';
import type { CostSummary } from '../../sim/run/prediction';

export type Task = { kind: 'block'; method: number; block: number } | { kind: 'cost'; method: number };

export type Done = { kind: 'block'; result: BlockResult } | { kind: 'cost'; result: CostSummary };

/** Does the tasks of one project, keeping the plan of the method it was last asked about. */
export function taskDoer(project: Project): (task: Task) => Done {
  const { trials, seed } = project.run;
  let planned = -1;
  let plan: MethodPlan | undefined;
  return (task) => {
    if (plan === undefined || planned !== task.method) {
      plan = methodPlan(project, task.method);
      planned = task.method;
    }
    if (task.kind === 'cost') return { kind: 'cost', result: pieceCost(plan, seed, setUpsFor(trials)) };
    return { kind: 'block', result: runBlock(plan, seed, task.block, trialsInBlock(trials, task.block)) };
  };
}
