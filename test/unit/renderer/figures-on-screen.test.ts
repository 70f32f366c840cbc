/** Which project the figures on the screen are for while an edit is worked out. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { edit, replaceProject, undo } from '../../../renderer/state/document-store';
import { withFigure, withSection } from '../../../renderer/state/edits';
import { useFiguresOnScreen } from '../../../renderer/state/figures-on-screen';
import { keepFailure, keepOutcomes, rememberShown, useRun } from '../../../renderer/state/run-store';
import { setSwitchedOff, useView } from '../../../renderer/state/view-store';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import { runMethod } from '../../../sim/run/run-method';

function simulated(project: Project): void {
  const found = project.methods.map((_, method) => {
    const result = finish(runMethod(project, method, { trials: 100 }));
    return [method, { result, stage: 'preview' as const, showLimitMm: project.limits.showGapMm }] as const;
  });
  keepOutcomes(project, new Map(found));
}

const heldHidden = (): number => useFiguresOnScreen.getState().project.limits.hiddenGapMm;
const setHidden = (mm: number): void => edit(withSection('limits', { hiddenGapMm: mm }));

beforeEach(() => {
  vi.useFakeTimers();
  const project = exampleProject();
  replaceProject(project);
  simulated(project);
});

afterEach(() => {
  vi.useRealTimers();
  useRun.setState({ outcomes: new Map(), lastByName: new Map(), failures: new Map() });
  useView.setState({ switchedOff: [] });
});

test('an edit that needs new rings is shown with its first figures', () => {
  const before = useFiguresOnScreen.getState();
  setHidden(0.71);
  rememberShown(before.project);
  expect(useFiguresOnScreen.getState()).toBe(before);
  const { project } = useFiguresOnScreen.getState();
  simulated({ ...project, limits: { ...project.limits, hiddenGapMm: 0.71 } });
  expect(heldHidden()).toBe(0.71);
  expect(useFiguresOnScreen.getState().outcomes).toBe(useRun.getState().outcomes);
});

test('an edit whose figures are late is shown without them, and the wait is not begun anew by the next edit', () => {
  setHidden(0.72);
  vi.advanceTimersByTime(100);
  setHidden(0.73);
  expect(heldHidden()).not.toBe(0.73);
  vi.advanceTimersByTime(60);
  expect(heldHidden()).toBe(0.73);
});

test('an edit that needs no new rings is shown at once: the show limit, and an undone edit', () => {
  edit(withSection('limits', { showGapMm: 0.123 }));
  expect(useFiguresOnScreen.getState().project.limits.showGapMm).toBe(0.123);
  setHidden(0.74);
  undo();
  expect(useFiguresOnScreen.getState().project.limits.showGapMm).toBe(0.123);
  expect(vi.getTimerCount()).toBe(0);
});

test('other methods are shown at once, so that each figure stands beside its own', () => {
  const [first] = exampleProject().methods;
  if (!first) throw new Error('The example has methods.');
  edit((project) => ({ ...project, methods: [{ ...first, name: 'One more' }, ...project.methods] }));
  expect(useFiguresOnScreen.getState().project.methods[0]?.name).toBe('One more');
});

test('a method that is switched off is not waited for', () => {
  setSwitchedOff('Glued one by one', true);
  const place = exampleProject().methods.findIndex(({ name }) => name === 'Glued one by one');
  edit(withFigure(place, 'blade', 'kerfMm', 2.345));
  expect(useFiguresOnScreen.getState().project.methods[place]?.blade.kerfMm).toBe(2.345);
});

test('why a method could not be simulated is shown at once', () => {
  setHidden(0.75);
  const { project } = useFiguresOnScreen.getState();
  keepFailure({ ...project, limits: { ...project.limits, hiddenGapMm: 0.75 } }, 0, 'It cannot be closed.');
  expect(heldHidden()).toBe(0.75);
});
