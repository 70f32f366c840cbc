/** What is given to the workers, and when, with a pool that only notes it. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { edit, replaceProject } from '../../../renderer/state/document-store';
import { withFigure } from '../../../renderer/state/edits';
import { useRun } from '../../../renderer/state/run-store';
import { simulateProject } from '../../../renderer/state/simulate-project';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { TaskDropped, type TaskPool } from '../../../sim/questions/task-pool';
import { type DoTask, type Outcome, type Task, taskDoer } from '../../../sim/questions/tasks';
import { finish } from '../../../sim/run/block-loop';

interface Noted {
  project: Project;
  task: Task;
  isDropped: boolean;
  /** Does it, and hands its outcome over. */
  end: () => void;
}

const noted: Noted[] = [];
const screen = { isDrawn: () => {} };

const notingPool: TaskPool = {
  size: 1,
  job(project) {
    const stepsOf = taskDoer(project, () => 0);
    const ends: (() => void)[] = [];
    const ask = (task: Task): Promise<Outcome> => {
      const done = new Promise<Outcome>((resolve, reject) => {
        const note = { project, task, isDropped: false, end: () => resolve(finish(stepsOf(task, () => false))) };
        ends.push(() => {
          note.isDropped = true;
          reject(new TaskDropped());
        });
        noted.push(note);
      });
      done.catch(() => {});
      return done;
    };
    // The outcome is of the task's kind.
    return {
      do: ask as DoTask,
      stop: () => {},
      // Part of a run is given up only when it is over.
      drop(which) {
        if (!which) for (const end of ends) end();
      },
    };
  },
  close: async () => {},
};

const previews = (): Noted[] => noted.filter(({ task }) => task.kind === 'preview');
const isPreview = (): boolean => noted.at(-1)?.task.kind === 'preview';
const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

async function endAll(): Promise<void> {
  for (const { end } of noted) end();
  await nextTurn();
}

let seed = 0;
beforeEach(() => {
  noted.length = 0;
  const project = exampleProject();
  seed++;
  replaceProject({ ...project, methods: project.methods.slice(0, 1), run: { ...project.run, trials: 400, seed } });
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
    await endAll();
  }
});

test('after a preview the longer runs wait until it is drawn', async () => {
  expect(isPreview()).toBe(true);
  await endAll();
  expect(noted).toHaveLength(1);
  expect(useRun.getState().outcomes.size).toBeGreaterThan(0);
  screen.isDrawn();
  await nextTurn();
  expect(noted.length).toBeGreaterThan(1);
  expect(isPreview()).toBe(false);
});

test('an edit in the middle of a longer run drops it and begins the next preview within the same turn', async () => {
  await endAll();
  screen.isDrawn();
  await nextTurn();
  const longer = noted.at(-1);
  edit(withFigure(0, 'tilt', 'sharedDeg', 0.33));
  expect(longer?.isDropped).toBe(true);
  const { length } = noted;
  expect(previews()).toHaveLength(2);
  expect(isPreview()).toBe(true);
  // The pass that was overtaken ends there, and hands nothing more to the workers.
  await nextTurn();
  expect(noted).toHaveLength(length);
  expect(useRun.getState().work).not.toBeNull();
});

test('an edit in the middle of a preview waits for it, so that results move while a slider moves', async () => {
  edit(withFigure(0, 'tilt', 'sharedDeg', 0.34));
  expect(noted).toHaveLength(1);
  expect(noted[0]?.isDropped).toBe(false);
  await endAll();
  screen.isDrawn();
  await nextTurn();
  expect(noted).toHaveLength(2);
  expect(isPreview()).toBe(true);
  expect(noted[1]?.project.methods[0]?.tilt.sharedDeg).toBe(0.34);
});

test('an edit between the preview and its drawing begins the next preview at once', async () => {
  await endAll();
  edit(withFigure(0, 'tilt', 'sharedDeg', 0.35));
  expect(noted).toHaveLength(2);
  expect(isPreview()).toBe(true);
  screen.isDrawn();
  await nextTurn();
  expect(noted).toHaveLength(2);
});
