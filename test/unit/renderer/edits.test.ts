import { expect, test } from 'vitest';
import {
  freeName,
  withExplain,
  withFigure,
  withMethodAdded,
  withMethodCopied,
  withMethodMoved,
  withMethodRenamed,
  withoutMethod,
  withSection,
  withShown,
} from '../../../renderer/state/edits';
import { exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { checkProject } from '../../../sim/reading/checks';

const names = (project: ReturnType<typeof exampleProject>): string[] => project.methods.map(({ name }) => name);

test('a key set to undefined is taken out, so that the file does not carry it', () => {
  const project = withSection('piece', { insert: undefined })(exampleProject());
  expect('insert' in project.piece).toBe(false);
  expect(writeProject(project)).not.toContain('"insert"');
});

test('a figure of one method leaves the other methods the very same objects', () => {
  const before = exampleProject();
  const after = withFigure(1, 'tilt', 'sharedDeg', 0.07)(before);
  expect(after.methods[1]?.tilt.sharedDeg).toBe(0.07);
  expect(after.methods[0]).toBe(before.methods[0]);
  expect(before.methods[1]?.tilt.sharedDeg).not.toBe(0.07);
});

test('an arm left empty goes out of the file, and the project stays one that can be saved', () => {
  const project = withFigure(0, 'test', 'armMm', undefined)(exampleProject());
  expect('armMm' in (project.methods[0]?.test ?? {})).toBe(false);
  expect(checkProject(project)).toEqual([]);
});

test('methods change places one by one and stop at the ends', () => {
  const project = exampleProject();
  const [a, b, ...rest] = names(project);
  expect(names(withMethodMoved(0, 1)(project))).toEqual([b, a, ...rest]);
  expect(withMethodMoved(0, -1)(project)).toBe(project);
  expect(withMethodMoved(project.methods.length - 1, 1)(project)).toBe(project);
});

test('copies and added methods get names that no other method has', () => {
  let project = exampleProject();
  project = withMethodCopied(0)(project);
  project = withMethodCopied(0)(project);
  const first = project.methods[0];
  if (first) project = withMethodAdded(first)(project);
  expect(new Set(names(project)).size).toBe(project.methods.length);
  expect(checkProject(project)).toEqual([]);
});

test('a copy stands right after its original, with the same figures', () => {
  const project = withMethodCopied(1)(exampleProject());
  expect(project.methods[2]?.name).toBe(`${project.methods[1]?.name} 2`);
  expect({ ...project.methods[2], name: '' }).toEqual({ ...project.methods[1], name: '' });
});

test('a number at the end of a name is counted on, not added to', () => {
  const project = withMethodCopied(0)(exampleProject());
  const [first] = names(exampleProject());
  expect(freeName(project, `${first} 2`)).toBe(`${first} 3`);
});

test('the last method cannot be removed', () => {
  const project = { ...exampleProject(), methods: exampleProject().methods.slice(0, 1) };
  expect(withoutMethod(0)(project)).toBe(project);
});

test('the words for the sheets leave no trace once they are empty, and the sheets follow their method', () => {
  const project = exampleProject();
  const named = withExplain({ method: 'Fixed stop', client: 'For the library' })(project);
  expect(withMethodRenamed(1, 'Stop block')(named).explain).toEqual({
    method: 'Stop block',
    client: 'For the library',
  });
  expect(withMethodRenamed(0, 'Pencil')(named).explain?.method).toBe('Fixed stop');
  expect(withoutMethod(1)(named).explain).toEqual({ client: 'For the library' });
  expect(withoutMethod(0)(named).explain?.method).toBe('Fixed stop');
  expect(withExplain({ method: undefined, client: undefined })(named)).toEqual(project);
  const hidden = withShown('season', false)(project);
  expect(hidden.explain).toEqual({ show: { season: false } });
  expect(withShown('season', true)(hidden)).toEqual(project);
});
