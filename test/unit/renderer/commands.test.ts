import { expect, test } from 'vitest';
import { ariaShortcut, commandsFor, isPressed, shortcutText } from '../../../renderer/app/commands';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { exampleProject } from '../../../sim/project/example';
import { memoryHost } from '../../support/memory-host';

const host = memoryHost();

function press(key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>>) {
  return { key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held } as KeyboardEvent;
}

test('no two commands share an id or a shortcut', () => {
  const commands = commandsFor(host);
  const shortcuts = commands.flatMap(({ shortcut }) => (shortcut ? [shortcutText(shortcut, false)] : []));
  expect(new Set(commands.map(({ id }) => id)).size).toBe(commands.length);
  expect(new Set(shortcuts).size).toBe(shortcuts.length);
});

test('a shortcut wants exactly its keys, with Ctrl or with the command key', () => {
  const undo = commandsFor(host).find(({ id }) => id === 'undo')?.shortcut;
  if (!undo) throw new Error('Undo has no shortcut.');
  expect(isPressed(undo, press('z', { ctrlKey: true }))).toBe(true);
  expect(isPressed(undo, press('z', { metaKey: true }))).toBe(true);
  expect(isPressed(undo, press('Z', { ctrlKey: true, shiftKey: true }))).toBe(false);
  expect(isPressed(undo, press('z', { ctrlKey: true, altKey: true }))).toBe(false);
  expect(isPressed(undo, press('z', {}))).toBe(false);
});

test('shortcuts are written the way each system writes them', () => {
  const redo = { key: 'z', mod: true, shift: true };
  expect(shortcutText(redo, false)).toBe('Ctrl+Shift+Z');
  expect(shortcutText(redo, true)).toBe('⇧⌘Z');
  expect(ariaShortcut(redo)).toBe('Control+Shift+Z Meta+Shift+Z');
});

test('undo and redo apply only while there is something to undo or redo', async () => {
  replaceProject(exampleProject());
  const [undo, redo] = ['undo', 'redo'].map((wanted) => commandsFor(host).find(({ id }) => id === wanted));
  expect(undo?.when()).toBe(false);
  edit(withSection('limits', { showGapMm: 0.3 }));
  expect(undo?.when()).toBe(true);
  expect(redo?.when()).toBe(false);
  await undo?.run();
  expect(redo?.when()).toBe(true);
  expect(useDocument.getState().project.limits.showGapMm).toBe(exampleProject().limits.showGapMm);
});
