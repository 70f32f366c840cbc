import { beforeEach, expect, test } from 'vitest';
import {
  beginGesture,
  edit,
  endGesture,
  redo,
  replaceProject,
  undo,
  useDocument,
} from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { isEdited, useFile } from '../../../renderer/state/file-store';
import { exampleProject } from '../../../sim/project/example';

const limit = (): number => useDocument.getState().project.limits.showGapMm;
const steps = (): number => useDocument.temporal.getState().pastStates.length;
const setLimit = (showGapMm: number): void => edit(withSection('limits', { showGapMm }));

beforeEach(() => {
  const project = exampleProject();
  replaceProject(project);
  useFile.setState({ savedProject: project });
});

test('a drag of many moves is one undo step, back to where it began', () => {
  const before = limit();
  beginGesture();
  for (const mm of [0.16, 0.2, 0.31, 0.4]) setLimit(mm);
  endGesture();
  expect(steps()).toBe(1);
  undo();
  expect(limit()).toBe(before);
  redo();
  expect(limit()).toBe(0.4);
});

test('two gestures after each other are two steps', () => {
  for (const mm of [0.2, 0.3]) {
    beginGesture();
    setLimit(mm - 0.01);
    setLimit(mm);
    endGesture();
  }
  expect(steps()).toBe(2);
  undo();
  expect(limit()).toBe(0.2);
});

test('edits outside a gesture are a step each', () => {
  setLimit(0.2);
  setLimit(0.3);
  undo();
  expect(limit()).toBe(0.2);
});

test('a gesture that changes nothing leaves no step', () => {
  beginGesture();
  edit((project) => project);
  endGesture();
  expect(steps()).toBe(0);
});

test('a new edit after undoing throws away what could be redone', () => {
  setLimit(0.2);
  undo();
  setLimit(0.3);
  redo();
  expect(limit()).toBe(0.3);
});

test('another project cannot be undone into the former one', () => {
  setLimit(0.2);
  replaceProject({ ...exampleProject(), title: 'Another' });
  undo();
  expect(useDocument.getState().project.title).toBe('Another');
});

test('undoing back to what was saved counts as saved', () => {
  expect(isEdited()).toBe(false);
  setLimit(0.2);
  expect(isEdited()).toBe(true);
  undo();
  expect(isEdited()).toBe(false);
});
