/** What is given to the workers, and when, with a pool that only notes it. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { edit, replaceProject } from '../../../renderer/state/document-store';
import { withFigure } from '../../../renderer/state/edits';
import { useRun } from '../../../renderer/state/run-store';
import { simulateProject } from '../../../renderer/state/simulate-project';
import type { SimulationPool } from '../../../renderer/worker/pool';
import type { Task } from '../../../renderer/worker/protocol';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';

interface Noted {
  task: Task;
  isDropped: boolean;
  /** Ends it with its figures. */
  end: () => void;
  drop: () => void;
}

const noted: Noted[] = [];
const screen = { isDrawn: () => {} };

function resultOf({ project, methods }: Task): MethodResult[] {
  return methods.map((method) => finish(runMethod(project, method, { trials: 400 })));
}

const notingPool: SimulationPool = {
  size: 1,
  run(task) {
    const note: Noted = { task, isDropped: false, end: () => {}, drop: () => {} };
    noted.push(note);
    const results = new Promise<MethodResult[] | null>((resolve) => {
      note.end = () => resolve(resultOf(task));
      note.drop = () => {
        note.isDropped = true;
        resolve(null);
      };
    });
    return { results, stop: note.drop, drop: note.drop };
  },
  ask: () => {
    throw new Error('No question is asked here.');
  },
};

const isPreview = (): boolean => noted.at(-1)?.task.budgetMs !== undefined;
const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

async function endLast(): Promise<void> {
  noted.at(-1)?.end();
  await nextTurn();
}

let seed = 0;
beforeEach(() => {
  noted.length = 0;
  const project = exampleProject();
  seed++;
  replaceProject({ ...project, methods: project.methods.slice(0, 1), run: { ...project.run, seed } });
  // It follows the project for good, as in the window.
  if (seed === 1) {
    simulateProject(
      notingPool,
      () =>
        new Promise((resolve) => {
          screen.isDrawn = resolve;
        }),
    );
  }
});

afterEach(async () => {
  while (useRun.getState().work) {
    screen.isDrawn();
    await endLast();
  }
});

test('after a preview the longer runs wait until it is drawn', async () => {
  expect(isPreview()).toBe(true);
  await endLast();
  expect(noted).toHaveLength(1);
  expect(useRun.getState().outcomes.size).toBeGreaterThan(0);
  screen.isDrawn();
  await nextTurn();
  expect(noted).toHaveLength(2);
  expect(isPreview()).toBe(false);
});

test('an edit in the middle of a longer run drops it and begins the next preview within the same turn', async () => {
  await endLast();
  screen.isDrawn();
  await nextTurn();
  const longer = noted.at(-1);
  edit(withFigure(0, 'tilt', 'sharedDeg', 0.33));
  expect(longer?.isDropped).toBe(true);
  expect(noted).toHaveLength(3);
  expect(isPreview()).toBe(true);
  // The pass that was overtaken ends there, and hands nothing more to the workers.
  await nextTurn();
  expect(noted).toHaveLength(3);
  expect(useRun.getState().work).not.toBeNull();
});

test('an edit in the middle of a preview waits for it, so that results move while a slider moves', async () => {
  edit(withFigure(0, 'tilt', 'sharedDeg', 0.34));
  expect(noted).toHaveLength(1);
  expect(noted[0]?.isDropped).toBe(false);
  await endLast();
  screen.isDrawn();
  await nextTurn();
  expect(noted).toHaveLength(2);
  expect(isPreview()).toBe(true);
  expect(noted[1]?.task.project.methods[0]?.tilt.sharedDeg).toBe(0.34);
});

test('an edit between the preview and its drawing begins the next preview at once', async () => {
  await endLast();
  edit(withFigure(0, 'tilt', 'sharedDeg', 0.35));
  expect(noted).toHaveLength(2);
  expect(isPreview()).toBe(true);
  screen.isDrawn();
  await nextTurn();
  expect(noted).toHaveLength(2);
});
