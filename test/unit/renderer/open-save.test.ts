import { beforeEach, expect, test } from 'vitest';
import type { FileToSave, Host, HostProblem, OpenedFile, SavedFile } from '../../../main/contract/host';
import {
  openAtStart,
  openExample,
  openFile,
  openRecent,
  saveFile,
  takeUpDropped,
} from '../../../renderer/app/open-save';
import { fileNameFor } from '../../../renderer/exports/file-name';
import { take, useChoice } from '../../../renderer/state/choice-store';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { isEdited, useFile } from '../../../renderer/state/file-store';
import { useView } from '../../../renderer/state/view-store';
import { exampleProject, planterProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { memoryHost } from '../../support/memory-host';

const saved: FileToSave[] = [];

function hostWith(opened: OpenedFile | HostProblem | null, answer?: SavedFile | HostProblem): Host {
  return memoryHost({
    openedAtStart: async () => opened,
    open: async () => opened,
    save: async (file) => {
      saved.push(file);
      return answer ?? { name: file.name, place: file.place };
    },
  });
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

/** Gives one of the answers of the question on the screen. */
function answer(label: string): void {
  const given = useChoice.getState().choice?.answers.find((each) => each.label === label);
  if (!given) throw new Error(`There is no answer "${label}".`);
  take(given);
}

test('a file changed by somebody else is written only after a choice, and every choice does what it says', async () => {
  const changed: HostProblem = { problem: 'piece was changed.', because: 'changed on disk' };
  const asked: FileToSave[] = [];
  const host = memoryHost({
    open: async () => file(writeProject(planterProject())),
    reopen: async () => file(writeProject(exampleProject())),
    save: async (wanted) => {
      asked.push(wanted);
      return wanted.overwrite || wanted.place === null ? { name: wanted.name, place: wanted.place } : changed;
    },
  });
  const saveEdited = async () => {
    asked.length = 0;
    await openFile(host);
    edit(withSection('limits', { showGapMm: 0.22 }));
    await saveFile(host);
    expect(useChoice.getState().choice?.lines).toEqual(['piece was changed.']);
    expect(isEdited()).toBe(true);
  };

  await saveEdited();
  answer('Write over it');
  await expect.poll(isEdited).toBe(false);
  expect(asked.map(({ overwrite, place }) => [overwrite, place])).toEqual([
    [undefined, '/there'],
    [true, '/there'],
  ]);

  await saveEdited();
  answer('Save under another name');
  await expect.poll(isEdited).toBe(false);
  expect(asked.map(({ place }) => place)).toEqual(['/there', null]);

  await saveEdited();
  answer('Open it as it is now');
  await expect.poll(() => useDocument.getState().project).toEqual(exampleProject());
  expect(asked).toHaveLength(1);
  expect(isEdited()).toBe(false);
});

test('a recent file is opened from the place it is known by', async () => {
  const host = memoryHost({
    recent: async () => [{ name: 'piece.ringtrue.json', folder: '/shop', place: 'there' }],
    reopen: async (place) => ({ name: 'piece.ringtrue.json', text: writeProject(planterProject()), place }),
  });
  await openRecent(host);
  answer('piece.ringtrue.json');
  await expect.poll(() => useFile.getState().place).toBe('there');
  expect(useDocument.getState().project).toEqual(planterProject());
});

test('a dropped file has its place where the host is told it, else none, and the host has the last word', async () => {
  const dropped = new File([writeProject(exampleProject())], 'mine.ringtrue.json');
  const opened = file(writeProject(planterProject()));
  await takeUpDropped(memoryHost({ openDropped: async () => opened }), dropped);
  expect(useFile.getState()).toMatchObject({ fileName: 'piece.ringtrue.json', place: '/there' });
  expect(useDocument.getState().project).toEqual(planterProject());
  await takeUpDropped(memoryHost({ openDropped: async () => ({ problem: 'mine is gone.' }) }), dropped);
  expect(useView.getState().refusal?.lines).toEqual(['mine is gone.']);
  expect(useDocument.getState().project).toEqual(planterProject());
  await takeUpDropped(memoryHost(), dropped);
  expect(useFile.getState()).toMatchObject({ fileName: 'mine.ringtrue.json', place: null });
  expect(useDocument.getState().project).toEqual(exampleProject());
  expect(isEdited()).toBe(false);
});
