/** Everything a person can do from the whole window. Buttons, keys and menus read this one list. */
import type { Host } from '../../main/contract/host';
import { redo, undo, useDocument } from '../state/document-store';
import { PAGES, type Page, showPage } from '../state/view-store';
import { mayLeave, openExample, openFile, openRecent, saveFile } from './open-save';

/** `mod` is Ctrl, on a Mac the command key. */
export interface Shortcut {
  key: string;
  mod: boolean;
  shift: boolean;
}

export interface Command {
  id: string;
  label: string;
  /** Other words a person may look for it by. */
  keywords: readonly string[];
  shortcut: Shortcut | null;
  /** Whether it does anything just now. */
  when: () => boolean;
  run: () => void | Promise<void>;
}

export const PAGE_NAMES: Record<Page, string> = {
  piece: 'Piece',
  methods: 'Methods',
  verdict: 'Verdict',
  joints: 'Joints',
  'test-cuts': 'Test cuts',
  explain: 'Explain',
};

const always = (): boolean => true;
const mod = (key: string, shift = false): Shortcut => ({ key, mod: true, shift });

export function commandsFor(host: Host): readonly Command[] {
  const history = () => useDocument.temporal.getState();
  return [
    {
      id: 'open',
      label: 'Open',
      keywords: ['file', 'load', 'project'],
      shortcut: mod('o'),
      when: always,
      run: async () => {
        if (mayLeave()) await openFile(host);
      },
    },
    {
      id: 'open-recent',
      label: 'Recent',
      keywords: ['file', 'last', 'open again', 'reopen'],
      shortcut: null,
      when: always,
      run: () => openRecent(host),
    },
    {
      id: 'save',
      label: 'Save',
      keywords: ['file', 'keep', 'store'],
      shortcut: mod('s'),
      when: always,
      run: () => saveFile(host),
    },
    {
      id: 'open-example',
      label: 'Open the example',
      keywords: ['sample', 'start', 'demo'],
      shortcut: null,
      when: always,
      run: () => {
        if (mayLeave()) openExample();
      },
    },
    {
      id: 'undo',
      label: 'Undo',
      keywords: ['back', 'revert'],
      shortcut: mod('z'),
      when: () => history().pastStates.length > 0,
      run: undo,
    },
    {
      id: 'redo',
      label: 'Redo',
      keywords: ['again', 'forward'],
      shortcut: mod('z', true),
      when: () => history().futureStates.length > 0,
      run: redo,
    },
    ...PAGES.map(
      (page): Command => ({
        id: `show-${page}`,
        label: PAGE_NAMES[page],
        keywords: ['page', 'go to', 'show'],
        shortcut: null,
        when: always,
        run: () => showPage(page),
      }),
    ),
  ];
}

export function isPressed(shortcut: Shortcut, event: KeyboardEvent): boolean {
  const isMod = event.ctrlKey !== event.metaKey;
  return (
    event.key.toLowerCase() === shortcut.key &&
    isMod === shortcut.mod &&
    event.shiftKey === shortcut.shift &&
    !event.altKey
  );
}

/** "Ctrl+Shift+Z", as a button's hint says it. */
export function shortcutText({ key, mod, shift }: Shortcut, isMac: boolean): string {
  if (isMac) return `${shift ? '⇧' : ''}${mod ? '⌘' : ''}${key.toUpperCase()}`;
  return [...(mod ? ['Ctrl'] : []), ...(shift ? ['Shift'] : []), key.toUpperCase()].join('+');
}

/** For assistive technology, as aria-keyshortcuts wants it. */
export function ariaShortcut({ key, mod, shift }: Shortcut): string {
  const keys = `${shift ? 'Shift+' : ''}${key.toUpperCase()}`;
  return mod ? `Control+${keys} Meta+${keys}` : keys;
}
