/** The error budget of a method and its sensitivity indices, a task for each source and for each block of rings. */
import { budgetOf, budgetSources, type SourceBudget } from '../../sim/budget/budget';
import { SENSITIVITY_TRIALS, type SourceIndices, sourceIndices } from '../../sim/budget/source-sensitivity';
import type { Project } from '../../sim/project/document';
import { blockCount, trialsInBlock } from '../../sim/run/block-loop';
import type { TaskOptions, TaskRunner } from './task';

export async function askBudget(
  runner: TaskRunner,
  project: Project,
  method: number,
  options: TaskOptions,
): Promise<SourceBudget> {
  const sources = budgetSources(project, method);
  const all = runner.do({ kind: 'budgetRun', method, without: undefined, options });
  const runs = sources.map((without) => runner.do({ kind: 'budgetRun', method, without, options }));
  const without = await Promise.all(runs);
  return budgetOf(project, method, await all, new Map(sources.map((source, k) => [source, without[k]!])));
}

export const indexTrials = ({ trials = SENSITIVITY_TRIALS }: TaskOptions): number => trials;

export async function askIndices(
  runner: TaskRunner,
  project: Project,
  method: number,
  options: TaskOptions,
): Promise<SourceIndices[]> {
  const trials = indexTrials(options);
  const blocks = Array.from({ length: blockCount(trials) }, (_, block) =>
    runner.do({ kind: 'sensitivity', method, block, rings: trialsInBlock(trials, block), options }),
  );
  return sourceIndices(budgetSources(project, method), await Promise.all(blocks));
}
