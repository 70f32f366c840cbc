/** Each method of the project with what is known about it so far. */
import type { Method, Project } from '../../sim/project/document';
import { rememberLastResult } from './remember-last-result';
import { type Outcome, outcomeKey, type RunState, useRun } from './run-store';
import { useShownProject } from './shown-project';
import { useView } from './view-store';

export interface MethodOutcome {
  method: Method;
  /** Its place in the project, from 0; the mark follows from it. */
  index: number;
  isOff: boolean;
  /** null before anything was simulated. */
  outcome: Outcome | null;
  /** Whether the outcome was simulated for the method as it stands; an older one is shown softened. */
  isFresh: boolean;
  /** Why it could not be simulated. */
  failure: string | null;
}

export function methodOutcomes(
  project: Project,
  { outcomes, lastByName, failures }: Pick<RunState, 'outcomes' | 'lastByName' | 'failures'>,
  switchedOff: readonly string[],
): MethodOutcome[] {
  return project.methods.map((method, index) => {
    const key = outcomeKey(project, index);
    const fresh = outcomes.get(key);
    return {
      method,
      index,
      isOff: switchedOff.includes(method.name),
      outcome: fresh ?? lastByName.get(method.name) ?? null,
      isFresh: fresh !== undefined,
      failure: failures.get(key) ?? null,
    };
  });
}

export function useMethodOutcomes(): MethodOutcome[] {
  const project = useShownProject();
  const outcomes = useRun((state) => state.outcomes);
  const lastByName = useRun((state) => state.lastByName);
  const failures = useRun((state) => state.failures);
  const switchedOff = useView((state) => state.switchedOff);
  return shownOutcomes(project, outcomes, lastByName, failures, switchedOff);
}

const shownOutcomes = rememberLastResult(
  (
    project: Project,
    outcomes: RunState['outcomes'],
    lastByName: RunState['lastByName'],
    failures: RunState['failures'],
    switchedOff: readonly string[],
  ) => methodOutcomes(project, { outcomes, lastByName, failures }, switchedOff),
);
