// @vitest-environment happy-dom
/** Coming back to the window after another program changed the file. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { tellOfChange } from '../../../renderer/app/changed-on-disk';
import { takeUp } from '../../../renderer/app/open-save';
import { take, useChoice } from '../../../renderer/state/choice-store';
import { edit, undo, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { isEdited, useFile } from '../../../renderer/state/file-store';
import { useView } from '../../../renderer/state/view-store';
import { exampleProject, planterProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { memoryHost } from '../../support/memory-host';

const SENTENCE = 'piece.ringtrue.json was changed by another program since it was opened or saved here.';

const changedOnDisk = vi.fn(async (_place: string): Promise<string | null> => SENTENCE);
const host = memoryHost({
  changedOnDisk,
  reopen: async (place) => ({ name: 'piece.ringtrue.json', text: writeProject(exampleProject()), place }),
});

beforeEach(() => {
  takeUp({ name: 'piece.ringtrue.json', text: writeProject(planterProject()), place: 'there' });
  useChoice.setState({ choice: null });
  changedOnDisk.mockClear();
});

afterEach(() => document.body.replaceChildren());

function answer(label: string): void {
  const given = useChoice.getState().choice?.answers.find((each) => each.label === label);
  if (!given) throw new Error(`There is no answer "${label}".`);
  take(given);
}

function labels() {
  return useChoice.getState().choice?.answers.map(({ label, detail }) => [label, detail]);
}

test('where nothing is edited, the file is offered as it is now, and nothing is said to be lost', async () => {
  await tellOfChange(host);
  expect(changedOnDisk).toHaveBeenCalledWith('there');
  expect(useChoice.getState().choice?.lines).toEqual([SENTENCE]);
  expect(labels()?.[0]).toEqual(['Open it as it is now', undefined]);
  answer('Open it as it is now');
  await expect.poll(() => useDocument.getState().project).toEqual(exampleProject());
  expect(isEdited()).toBe(false);
});

test('what is kept counts as unsaved, even undone to where it was saved last', async () => {
  edit(withSection('limits', { showGapMm: 0.22 }));
  await tellOfChange(host);
  expect(labels()?.[0]).toEqual(['Open it as it is now', 'Your edits are given up.']);
  answer('Keep what is here');
  expect(useDocument.getState().project.limits.showGapMm).toBe(0.22);
  undo();
  expect(useDocument.getState().project).toEqual(planterProject());
  expect(isEdited()).toBe(true);
});

test('a file that cannot be read as it is now leaves the project on the screen, as unsaved', async () => {
  const broken = memoryHost({ changedOnDisk, reopen: async () => ({ problem: 'piece is no text.' }) });
  await tellOfChange(broken);
  answer('Open it as it is now');
  await expect.poll(() => useView.getState().refusal?.lines).toEqual(['piece is no text.']);
  expect(useDocument.getState().project).toEqual(planterProject());
  expect(isEdited()).toBe(true);
});

test('nothing is said of a file that is as it was, of a project without one, or while a dialog is open', async () => {
  changedOnDisk.mockResolvedValueOnce(null);
  await tellOfChange(host);
  expect(isEdited()).toBe(false);
  const dialog = document.createElement('dialog');
  dialog.open = true;
  document.body.append(dialog);
  await tellOfChange(host);
  dialog.remove();
  useFile.setState({ place: null });
  await tellOfChange(host);
  expect(changedOnDisk).toHaveBeenCalledTimes(1);
  expect(useChoice.getState().choice).toBeNull();
});

test('an answer that comes after another file was opened is of no use any more', async () => {
  changedOnDisk.mockImplementationOnce(async () => {
    takeUp({ name: 'other.ringtrue.json', text: writeProject(exampleProject()), place: 'elsewhere' });
    return SENTENCE;
  });
  await tellOfChange(host);
  expect(useChoice.getState().choice).toBeNull();
  expect(isEdited()).toBe(false);
});
