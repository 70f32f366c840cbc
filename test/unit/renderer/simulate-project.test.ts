import { beforeEach, expect, test, vi } from 'vitest';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withFigure, withMethod, withMethodMoved, withSection } from '../../../renderer/state/edits';
import { methodOutcomes } from '../../../renderer/state/method-outcomes';
import { type Outcome, outcomeKey, useRun } from '../../../renderer/state/run-store';
import { type Simulation, simulateProject } from '../../../renderer/state/simulate-project';
import { setSwitchedOff, useView } from '../../../renderer/state/view-store';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { taskPool } from '../../../sim/questions/task-pool';
import { inProcessWorker, nothingToDraw } from '../../support/in-process-worker';

const TRIALS = 6000;

function small(trials = TRIALS): Project {
  const project = exampleProject();
  return { ...project, methods: project.methods.slice(0, 2), run: { ...project.run, trials } };
}

const started: Simulation[] = [];
/** One simulation for the file: it follows the stores for good, as in the window. */
function simulation(): Simulation {
  const [first] = started;
  if (first) return first;
  const made = simulateProject(taskPool(2, inProcessWorker), nothingToDraw);
  started.push(made);
  return made;
}

const project = (): Project => useDocument.getState().project;
const outcome = (method: number): Outcome | undefined => useRun.getState().outcomes.get(outcomeKey(project(), method));
const isSettled = (): boolean => useRun.getState().work === null && [0, 1].every((m) => outcome(m)?.stage === 'full');
const settle = (): Promise<void> => vi.waitFor(() => expect(isSettled()).toBe(true), { timeout: 30_000, interval: 10 });

beforeEach(async () => {
  useView.setState(useView.getInitialState());
  replaceProject(small());
  simulation();
  await settle();
});

test('all methods end with the file’s own number of rings and rule', () => {
  for (const method of [0, 1]) {
    expect(outcome(method)?.result.prediction).toMatchObject({
      trials: TRIALS,
      rule: 'contact',
      stopReason: 'trial-limit',
    });
  }
});

test('an edit shows a preview first and the whole after it, and leaves the other method as it was', async () => {
  const other = outcome(0);
  const stages: string[] = [];
  const stop = useRun.subscribe(() => {
    const stage = outcome(1)?.stage;
    if (stage && stages.at(-1) !== stage) stages.push(stage);
  });
  edit(withFigure(1, 'tilt', 'sharedDeg', 0.31));
  await settle();
  stop();
  expect(stages).toEqual(['preview', 'first', 'full']);
  expect(outcome(0)).toBe(other);
});

test('until the new outcome is there, the former one stays and counts as not fresh', () => {
  const before = outcome(1);
  edit(withFigure(1, 'tilt', 'sharedDeg', 0.32));
  const [, shown] = methodOutcomes(project(), useRun.getState(), []);
  expect(shown?.isFresh).toBe(false);
  expect(shown?.outcome).toBe(before);
});

test('another show limit keeps the rings and works out only what depends on it', async () => {
  const before = outcome(0)?.result;
  edit(withSection('limits', { showGapMm: 0.06 }));
  expect(outcome(0)?.result).toBe(before);
  await vi.waitFor(() => expect(outcome(0)?.showLimitMm).toBe(0.06), { timeout: 30_000, interval: 10 });
  await settle();
  expect(outcome(0)?.result.sample.showGapMm).toEqual(before?.sample.showGapMm);
  expect(outcome(0)?.result.prediction.yield.value).toBeLessThan(before?.prediction.yield.value ?? 0);
});

test('while a limit moves the figures do not count as settled, until it is back where they were worked out for', async () => {
  edit(withSection('limits', { showGapMm: 0.07 }));
  expect(useRun.getState().work).not.toBeNull();
  useDocument.temporal.getState().undo();
  expect(isSettled()).toBe(true);
});

test('names and order change nothing in the rings', () => {
  const [a, b] = [outcome(0), outcome(1)];
  edit(withMethodMoved(0, 1));
  edit(withMethod(0, (method) => ({ ...method, name: 'Renamed' })));
  expect([outcome(0), outcome(1)]).toEqual([b, a]);
  expect(isSettled()).toBe(true);
});

test('a value that cannot be used starts nothing, and mending it finds the rings again', async () => {
  const before = outcome(0);
  edit(withSection('piece', { thicknessMm: 0 }));
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(useRun.getState().work).toBeNull();
  expect(outcome(0)).toBeUndefined();
  useDocument.temporal.getState().undo();
  expect(outcome(0)).toBe(before);
});

test('a method that is switched off is left alone', async () => {
  setSwitchedOff(project().methods[1]?.name ?? '', true);
  edit(withSection('piece', { heightMm: 131 }));
  await vi.waitFor(() => expect(outcome(0)?.stage).toBe('full'), { timeout: 30_000, interval: 10 });
  expect(outcome(1)).toBeUndefined();
});

test('a cancel is obeyed before what is done is summed up; the rings done so far are kept, and going on does the rest', async () => {
  replaceProject(small(400_000));
  await vi.waitFor(() => expect(useRun.getState().work?.ringsDone).toBeGreaterThan(0), {
    timeout: 30_000,
    interval: 5,
  });
  const told: string[] = [];
  const unsubscribe = useRun.subscribe(({ work, outcomes }, before) => {
    if (work?.isStopped) told.push('stopped');
    if (outcomes !== before.outcomes) told.push('figures');
  });
  simulation().cancel();
  await vi.waitFor(() => expect(useRun.getState().work).toBeNull(), { timeout: 30_000, interval: 5 });
  unsubscribe();
  expect([...new Set(told)]).toEqual(['stopped', 'figures']);
  const stopped = [0, 1].map((method) => outcome(method)?.result.prediction);
  expect(stopped.some((prediction) => prediction?.stopReason === 'cancelled')).toBe(true);
  expect(stopped.every((prediction) => (prediction?.trials ?? 0) > 0)).toBe(true);
  simulation().goOn();
  expect(useRun.getState().work).not.toBeNull();
  simulation().cancel();
}, 60_000);
