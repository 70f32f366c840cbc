import { beforeEach, expect, test } from 'vitest';
import type { Host, HostProblem, OpenedFile, SavedFile } from '../../../main/contract/host';
import { fileNameFor, openAtStart, openExample, openFile, saveFile } from '../../../renderer/app/open-save';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { isEdited, useFile } from '../../../renderer/state/file-store';
import { useView } from '../../../renderer/state/view-store';
import { exampleProject, planterProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';

const saved: Parameters<Host['save']>[0][] = [];

function hostWith(opened: OpenedFile | HostProblem | null, answer?: SavedFile | HostProblem): Host {
  return {
    kind: 'test',
    openedAtStart: async () => opened,
    open: async () => opened,
    save: async (file) => {
      saved.push(file);
      return answer ?? { name: file.name, place: file.place };
    },
    setEdited: () => {},
  } satisfies Host;
}

const file = (text: string): OpenedFile => ({ name: 'piece.ringtrue.json', text, place: '/there' });

beforeEach(() => {
  saved.length = 0;
  useView.setState(useView.getInitialState());
  openExample();
});

test('what is opened is on the screen, counts as saved, and goes back to its own place', async () => {
  await openFile(hostWith(file(writeProject(planterProject()))));
  expect(useDocument.getState().project).toEqual(planterProject());
  expect(isEdited()).toBe(false);
  edit(withSection('limits', { showGapMm: 0.21 }));
  await saveFile(hostWith(null));
  expect(saved).toEqual([
    { name: 'piece.ringtrue.json', place: '/there', text: writeProject(useDocument.getState().project) },
  ]);
  expect(isEdited()).toBe(false);
});

test('a wrong file is refused by key and sentence, and the project on the screen stays', async () => {
  const before = useDocument.getState().project;
  const wrong = { ...planterProject(), piece: { ...planterProject().piece, thicknessMm: 0 } };
  await openAtStart(hostWith(file(writeProject(wrong))));
  expect(useDocument.getState().project).toBe(before);
  expect(useView.getState().refusal?.lines).toEqual([
    expect.stringMatching(/^piece\.thicknessMm: Thickness 0 mm is not above 0\./),
  ]);
});

test('a project that could not be opened again is not saved', async () => {
  edit(withSection('piece', { thicknessMm: 0 }));
  await saveFile(hostWith(null));
  expect(saved).toEqual([]);
  expect(useView.getState().refusal?.lines[0]).toContain('Thickness 0 mm is not above 0.');
});

test('a save the host could not do says why, and the edits still count as unsaved', async () => {
  edit(withSection('limits', { showGapMm: 0.2 }));
  await saveFile(hostWith(null, { problem: 'The disk is full. Free some space.' }));
  expect(useView.getState().refusal?.lines).toEqual(['The disk is full. Free some space.']);
  expect(isEdited()).toBe(true);
});

test('a change of mind while choosing changes nothing', async () => {
  const before = { ...useFile.getState() };
  await openFile(hostWith(null));
  expect(useFile.getState()).toEqual(before);
  expect(useView.getState().refusal).toBeNull();
});

test('the example has no file, so saving it asks for one named after its title', async () => {
  await openFile(hostWith(file(writeProject(planterProject()))));
  openExample();
  await saveFile(hostWith(null));
  expect(saved[0]).toMatchObject({ name: fileNameFor(exampleProject().title), place: null });
});

test('file names keep letters of any script and lose what a disk may refuse', () => {
  expect(fileNameFor('Lantern base, twelve staves')).toBe('lantern-base-twelve-staves.ringtrue.json');
  expect(fileNameFor('Öl/Faß: 12')).toBe('öl-faß-12.ringtrue.json');
  expect(fileNameFor('???')).toBe('project.ringtrue.json');
});

test('a project replaced while methods are switched off shows all of its own methods', async () => {
  useView.setState({ switchedOff: ['Fixed stop'] });
  await openFile(hostWith(file(writeProject(planterProject()))));
  expect(useView.getState().switchedOff).toEqual([]);
  replaceProject(exampleProject());
});
