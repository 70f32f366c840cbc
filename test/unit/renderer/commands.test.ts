import { beforeEach, expect, test } from 'vitest';
import { COMMAND_GROUPS, commandsMatching } from '../../../renderer/app/command';
import { commandsFor } from '../../../renderer/app/commands';
import { usePalette } from '../../../renderer/app/palette-store';
import { ariaShortcut, isPressed, menuShortcut, shortcutText } from '../../../renderer/parts/shortcut';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { useRun } from '../../../renderer/state/run-store';
import { setSwitchedOff, useView } from '../../../renderer/state/view-store';
import { exampleProject } from '../../../sim/project/example';
import { memoryHost } from '../../support/memory-host';

const host = memoryHost();
const done: string[] = [];
const simulation = { cancel: () => void done.push('cancel'), goOn: () => void done.push('go on') };
const now = () => commandsFor(host, simulation);

function command(id: string) {
  const found = now().find((one) => one.id === id);
  if (!found) throw new Error(`There is no command ${id}.`);
  return found;
}

function press(key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>>) {
  return { key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held } as KeyboardEvent;
}

beforeEach(() => {
  replaceProject(exampleProject());
  useView.setState(useView.getInitialState());
  useRun.setState(useRun.getInitialState());
  done.length = 0;
});

test('no two commands share an id, a label or a shortcut, and each stands under a known head', () => {
  const commands = now();
  const shortcuts = commands.flatMap(({ shortcut }) => (shortcut ? [shortcutText(shortcut, false)] : []));
  expect(new Set(commands.map(({ id }) => id)).size).toBe(commands.length);
  expect(new Set(commands.map(({ label }) => label)).size).toBe(commands.length);
  expect(new Set(shortcuts).size).toBe(shortcuts.length);
  for (const { group } of commands) expect(COMMAND_GROUPS).toContain(group);
});

test('a command that does not apply says why in a whole sentence', () => {
  const idle = now().flatMap(({ id, whyNot }) => {
    const reason = whyNot();
    return reason === null ? [] : [{ id, reason }];
  });
  expect(idle.map(({ id }) => id)).toEqual(expect.arrayContaining(['undo', 'redo', 'print', 'show-verdict', 'stop']));
  for (const { reason } of idle) expect(reason).toMatch(/^[A-Z6].+\.$/);
});

test('a shortcut wants exactly its keys, with Ctrl or with the command key', () => {
  const { shortcut: undo } = command('undo');
  if (!undo) throw new Error('Undo has no shortcut.');
  expect(isPressed(undo, press('z', { ctrlKey: true }))).toBe(true);
  expect(isPressed(undo, press('z', { metaKey: true }))).toBe(true);
  expect(isPressed(undo, press('Z', { ctrlKey: true, shiftKey: true }))).toBe(false);
  expect(isPressed(undo, press('z', { ctrlKey: true, altKey: true }))).toBe(false);
  expect(isPressed(undo, press('z', {}))).toBe(false);
});

test('shortcuts are written the way each system, each menu and each screen reader writes them', () => {
  const redo = { key: 'z', mod: true, shift: true };
  expect(shortcutText(redo, false)).toBe('Ctrl+Shift+Z');
  expect(shortcutText(redo, true)).toBe('⇧⌘Z');
  expect(ariaShortcut(redo)).toBe('Control+Shift+Z Meta+Shift+Z');
  expect(menuShortcut(redo)).toBe('CommandOrControl+Shift+Z');
  expect(menuShortcut({ key: 'f1', mod: false, shift: false })).toBe('F1');
});

test('a command is found by any of its words in any order, and not when one of them is foreign to it', () => {
  const found = (typed: string) => commandsMatching(now(), typed).map(({ id }) => id);
  expect(found('')).toHaveLength(now().length);
  expect(found('  AGAIN ')).toContain('redo');
  expect(found('line dupl marked')).toEqual(['duplicate-0']);
  expect(found('pdf')).toEqual(['save-pdf']);
  expect(found('undo nonsense')).toEqual([]);
});

test('undo and redo apply only while there is something to undo or redo', async () => {
  expect(command('undo').whyNot()).toBe('Nothing was changed yet.');
  edit(withSection('limits', { showGapMm: 0.3 }));
  expect(command('undo').whyNot()).toBeNull();
  expect(command('redo').whyNot()).toBe('Nothing was undone.');
  await command('undo').run();
  expect(command('redo').whyNot()).toBeNull();
  expect(useDocument.getState().project.limits.showGapMm).toBe(exampleProject().limits.showGapMm);
});

test('saving under another name asks where, though the project has a file', async () => {
  const { useFile } = await import('../../../renderer/state/file-store');
  useFile.setState({ fileName: 'lantern.json', place: 'its place' });
  await command('save').run();
  await command('save-as').run();
  expect(host.saved.map(({ name, place }) => ({ name, place }))).toEqual([
    { name: 'lantern.json', place: 'its place' },
    { name: 'lantern.json', place: null },
  ]);
});

test('the work is stopped only while figures are being refined, and taken up only once it was stopped', () => {
  expect([command('stop').whyNot(), command('go-on').whyNot()]).toEqual([expect.any(String), null]);
  useRun.setState({ work: { ringsDone: 10, ringsWanted: 100 } });
  expect([command('stop').whyNot(), command('go-on').whyNot()]).toEqual([null, 'Nothing was stopped.']);
  void command('stop').run();
  expect(done).toEqual(['cancel']);
});

test('each method can be copied, left out, moved and removed by name, as far as there is room and another one', async () => {
  const names = () => useDocument.getState().project.methods.map(({ name }) => name);
  const before = names();
  expect(command('move-left-0').whyNot()).toBe('It is at the left end already.');
  await command('duplicate-0').run();
  expect(names()[1]).toBe(`${before[0]} 2`);
  expect(useView.getState().page).toBe('methods');
  await command('move-left-1').run();
  expect(names()[0]).toBe(`${before[0]} 2`);
  await command(`add-method-${before[1]}`).run();
  expect(names()).toHaveLength(6);
  expect(command('duplicate-0').whyNot()).toMatch(/^6 methods/);
  await command('remove-0').run();
  expect(names()).toHaveLength(5);
  for (const name of names().slice(1)) setSwitchedOff(name, true);
  expect(command('switch-0').whyNot()).toBe('It is the only method that takes part.');
  expect(command('switch-1').label).toBe(`Take “${names()[1]}” into the comparison`);
  await command('switch-1').run();
  expect(useView.getState().switchedOff).not.toContain(names()[1]);
});

test('units and theme change by command, and never the piece', async () => {
  const { piece } = useDocument.getState().project;
  expect(command('inch-fractions').whyNot()).toBe('Lengths are in millimetres.');
  await command('units-inch').run();
  await command('inch-fractions').run();
  await command('theme-dark').run();
  expect(command('angle-style').label).toBe('Angles in degrees and minutes');
  await command('angle-style').run();
  expect(command('angle-style').label).toBe('Angles in decimal degrees');
  expect(useDocument.getState().project).toMatchObject({ display: 'inch', piece });
  expect(useView.getState()).toMatchObject({ inchFractions: true, angleStyle: 'minutes', theme: 'dark' });
  expect(command('theme-dark').whyNot()).not.toBeNull();
});

test('the list of commands is itself a command', async () => {
  await command('commands').run();
  expect(usePalette.getState().isOpen).toBe(true);
});
