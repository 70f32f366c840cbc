/** The simulated results on the screen. They follow from the project and are never part of it. */
import { create } from 'zustand';
import type { Project } from '../../sim/project/document';
import type { MethodResult } from '../../sim/run/prediction';

/** `preview`: few rings, to be redrawn at once. `first`: few rings by the file's own rule. `full`: all that was asked. */
export type Stage = 'preview' | 'first' | 'full';

export interface Outcome {
  result: MethodResult;
  stage: Stage;
  /** The show limit that the grades and the cost were worked out for, mm. */
  showLimitMm: number;
}

/** A run that is under way. */
export interface Work {
  ringsDone: number;
  ringsWanted: number;
  /** It was stopped; the rings done so far are being summed up. */
  isStopped?: true;
}

export interface RunState {
  /** By `outcomeKey`. */
  outcomes: ReadonlyMap<string, Outcome>;
  /** The latest outcome of each method name, shown softened until the one that fits is there. */
  lastByName: ReadonlyMap<string, Outcome>;
  work: Work | null;
  /** Why a method could not be simulated, by `outcomeKey`. */
  failures: ReadonlyMap<string, string>;
}

export const useRun = create<RunState>()(() => ({
  outcomes: new Map(),
  lastByName: new Map(),
  work: null,
  failures: new Map(),
}));

const OUTCOMES_KEPT = 24;
/** As many methods as a project compares; their outcomes are kept whatever their size. */
const OUTCOMES_ALWAYS_KEPT = 6;
const RINGS_KEPT = 4_000_000;

/**
 * Everything one method's rings follow from, the show limit left out: a sample answers for every show limit.
 * Names and titles are left out too, and the other methods do not matter.
 */
export function outcomeKey(project: Project, method: number): string {
  const { piece, stock, costs, run } = project;
  const { showGapMm: _, ...limits } = project.limits;
  const { name: __, ...rest } = project.methods[method] ?? { name: '' };
  return JSON.stringify({ piece, stock, costs, run, limits, method: rest });
}

/** The map with the given entry last. */
function withNewest<Value>(map: ReadonlyMap<string, Value>, key: string, value: Value): Map<string, Value> {
  const next = new Map(map);
  next.delete(key);
  next.set(key, value);
  return next;
}

function withoutOldest(map: Map<string, Outcome>): Map<string, Outcome> {
  let rings = 0;
  for (const { result } of map.values()) rings += result.prediction.trials;
  for (const [key, { result }] of map) {
    const isTooMuch = map.size > OUTCOMES_KEPT || (rings > RINGS_KEPT && map.size > OUTCOMES_ALWAYS_KEPT);
    if (!isTooMuch) break;
    rings -= result.prediction.trials;
    map.delete(key);
  }
  return map;
}

/** Outcomes that came together are shown together: each showing takes the page a redraw. */
export function keepOutcomes(project: Project, found: ReadonlyMap<number, Outcome>): void {
  if (found.size === 0) return;
  useRun.setState((run) => {
    let { outcomes, lastByName, failures } = run;
    for (const [method, outcome] of found) {
      const key = outcomeKey(project, method);
      outcomes = withoutOldest(withNewest(outcomes, key, outcome));
      lastByName = withoutOldest(withNewest(lastByName, project.methods[method]?.name ?? '', outcome));
      failures = without(failures, key);
    }
    return { outcomes, lastByName, failures };
  });
}

/** What is on the screen for a project stays there, softened, while the next one is worked out. */
export function rememberShown(project: Project): void {
  useRun.setState(({ outcomes, lastByName }) => {
    let next: ReadonlyMap<string, Outcome> = lastByName;
    project.methods.forEach(({ name }, method) => {
      const shown = outcomes.get(outcomeKey(project, method));
      if (shown && next.get(name) !== shown) next = withNewest(next, name, shown);
    });
    return next === lastByName ? {} : { lastByName: withoutOldest(new Map(next)) };
  });
}

export function keepFailure(project: Project, method: number, sentence: string): void {
  useRun.setState(({ failures }) => ({ failures: withNewest(failures, outcomeKey(project, method), sentence) }));
}

/** Throws one outcome away, so that it is worked out again. */
export function forgetOutcome(project: Project, method: number): void {
  const key = outcomeKey(project, method);
  useRun.setState(({ outcomes, failures }) => ({ outcomes: without(outcomes, key), failures: without(failures, key) }));
}

function without<Value>(map: ReadonlyMap<string, Value>, key: string): ReadonlyMap<string, Value> {
  if (!map.has(key)) return map;
  const next = new Map(map);
  next.delete(key);
  return next;
}

const STAGES: readonly Stage[] = ['preview', 'first', 'full'];

/** Whether a method's rings have not been simulated as far as `stage` yet. */
export function needsStage(project: Project, method: number, stage: Stage): boolean {
  const { outcomes, failures } = useRun.getState();
  const key = outcomeKey(project, method);
  if (failures.has(key)) return false;
  const outcome = outcomes.get(key);
  return !outcome || STAGES.indexOf(outcome.stage) < STAGES.indexOf(stage);
}

/** Whether the rings are all there, but graded and costed for another show limit. */
export function needsGrading(project: Project, method: number): boolean {
  const outcome = useRun.getState().outcomes.get(outcomeKey(project, method));
  return outcome?.stage === 'full' && outcome.showLimitMm !== project.limits.showGapMm;
}
