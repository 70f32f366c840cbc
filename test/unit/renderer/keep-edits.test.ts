import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepEdits, offerRecovery } from '../../../renderer/app/keep-edits';
import { openExample, saveFile } from '../../../renderer/app/open-save';
import { take, useChoice } from '../../../renderer/state/choice-store';
import { edit, undo, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { isEdited, useFile } from '../../../renderer/state/file-store';
import { useView } from '../../../renderer/state/view-store';
import { exampleProject, planterProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { readProject } from '../../../sim/reading/read';
import { type MemoryHost, memoryHost } from '../../support/memory-host';

let host: MemoryHost;
let stop = () => {};

function start(started: MemoryHost): void {
  host = started;
  stop = keepEdits(host);
}

function keptProject() {
  const outcome = readProject(host.kept?.text ?? '');
  return outcome.ok ? outcome.project : outcome.problems;
}

const settle = () => vi.advanceTimersByTimeAsync(0);
const setHeight = (heightMm: number) => edit(withSection('piece', { heightMm }));

beforeEach(() => {
  vi.useFakeTimers();
  useView.setState(useView.getInitialState());
  useChoice.setState({ choice: null });
  openExample();
});

afterEach(() => {
  stop();
  vi.useRealTimers();
});

test('edits are kept two seconds after the last of them, not after each', async () => {
  start(memoryHost());
  setHeight(150);
  await vi.advanceTimersByTimeAsync(1900);
  setHeight(151);
  await vi.advanceTimersByTimeAsync(1900);
  expect(host.kept).toBeNull();
  await vi.advanceTimersByTimeAsync(200);
  expect(keptProject()).toEqual(useDocument.getState().project);
  expect(host.kept).toMatchObject({ name: 'lantern-base-twelve-staves.ringtrue.json', place: null });
});

test('edits that follow one another without a rest are kept every ten seconds all the same', async () => {
  start(memoryHost());
  for (let second = 0; second < 9; second++) {
    setHeight(150 + second);
    await vi.advanceTimersByTimeAsync(1000);
  }
  expect(host.kept).toBeNull();
  setHeight(160);
  await vi.advanceTimersByTimeAsync(1000);
  expect(keptProject()).toMatchObject({ piece: { heightMm: 160 } });
  setHeight(161);
  await vi.advanceTimersByTimeAsync(1900);
  expect(keptProject()).toMatchObject({ piece: { heightMm: 160 } });
  await vi.advanceTimersByTimeAsync(200);
  expect(keptProject()).toMatchObject({ piece: { heightMm: 161 } });
});

test('what was kept goes only when it is saved, undone or given up, and a save that fails keeps it', async () => {
  start(memoryHost());
  const keepOne = async () => {
    setHeight(useDocument.getState().project.piece.heightMm + 1);
    await vi.advanceTimersByTimeAsync(2100);
    expect(host.kept).not.toBeNull();
  };
  await keepOne();
  await saveFile({ ...host, save: async () => ({ problem: 'The disk is full.' }) });
  await vi.advanceTimersByTimeAsync(5000);
  expect(host.kept).not.toBeNull();
  await saveFile(host);
  await settle();
  expect(host.kept).toBeNull();
  setHeight(152);
  await vi.advanceTimersByTimeAsync(2100);
  expect(host.kept).not.toBeNull();
  undo();
  await settle();
  expect(host.kept).toBeNull();
  await keepOne();
  openExample();
  await settle();
  expect(host.kept).toBeNull();
});

test('nothing that a former window left is touched before the person answers', async () => {
  const left = { name: 'bin.ringtrue.json', text: writeProject(planterProject()), place: 'there' };
  start(memoryHost());
  host.kept = left;
  openExample();
  await offerRecovery(host);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(host.kept).toBe(left);
  expect(useChoice.getState().choice).toMatchObject({
    mayWait: false,
    lines: [`Ringtrue ended without saving “${planterProject().title}” (bin.ringtrue.json); bring back the edits?`],
  });
});

test('brought back, the edits are on the screen as edits of their own file, and stay kept', async () => {
  start(memoryHost());
  host.kept = { name: 'bin.ringtrue.json', text: writeProject(planterProject()), place: 'there' };
  await offerRecovery(host);
  take(useChoice.getState().choice!.answers[0]!);
  expect(useDocument.getState().project).toEqual(planterProject());
  expect(isEdited()).toBe(true);
  expect(useFile.getState()).toMatchObject({ fileName: 'bin.ringtrue.json', place: 'there' });
  await vi.advanceTimersByTimeAsync(2100);
  expect(keptProject()).toEqual(planterProject());
  await saveFile(host);
  expect(host.saved.at(-1)?.place).toBe('there');
  expect(host.kept).toBeNull();
});

test('thrown away, the edits are gone and the screen stays', async () => {
  start(memoryHost());
  host.kept = { name: 'bin.ringtrue.json', text: writeProject(planterProject()), place: null };
  await offerRecovery(host);
  take(useChoice.getState().choice!.answers[1]!);
  await vi.advanceTimersByTimeAsync(0);
  expect(host.kept).toBeNull();
  expect(useDocument.getState().project).toEqual(exampleProject());
  expect(useChoice.getState().choice).toBeNull();
});

test('a value that cannot be used does not keep the edits around it from being kept', async () => {
  start(memoryHost());
  setHeight(150);
  edit(withSection('piece', { thicknessMm: 0 }));
  edit(withSection('limits', { showGapMm: 0.31 }));
  await vi.advanceTimersByTimeAsync(2100);
  expect(keptProject()).toMatchObject({
    piece: { heightMm: 150, thicknessMm: exampleProject().piece.thicknessMm },
    limits: { showGapMm: 0.31 },
  });
});

test('a machine that cannot keep edits says so once', async () => {
  start(memoryHost({ keepRecovery: async () => ({ problem: 'The disk is full.' }) }));
  setHeight(150);
  await vi.advanceTimersByTimeAsync(2100);
  expect(useView.getState().refusal?.lines[0]).toBe('The disk is full.');
  useView.setState({ refusal: null });
  setHeight(151);
  await vi.advanceTimersByTimeAsync(2100);
  expect(useView.getState().refusal).toBeNull();
});
