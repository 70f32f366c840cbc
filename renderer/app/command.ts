/** What a command is, and how its keys are pressed, written and spoken. */

export interface Shortcut {
  key: string;
  /** Ctrl, on a Mac the command key. */
  mod: boolean;
  shift: boolean;
}

/** Heads under which the list of commands and the window's menu sort them, in this order. */
export const COMMAND_GROUPS = ['File', 'Edit', 'Go to', 'Figures', 'Methods', 'View', 'Help'] as const;
export type CommandGroup = (typeof COMMAND_GROUPS)[number];

export interface Command {
  id: string;
  label: string;
  group: CommandGroup;
  /** Other words a person may look for it by. */
  keywords: readonly string[];
  shortcut: Shortcut | null;
  /** Why it does nothing just now, in a sentence; null when it applies. */
  whyNot: () => string | null;
  run: () => void | Promise<void>;
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

/** As the desktop shell's menu wants it: "CommandOrControl+Shift+Z". */
export function menuShortcut({ key, mod, shift }: Shortcut): string {
  return [...(mod ? ['CommandOrControl'] : []), ...(shift ? ['Shift'] : []), key.toUpperCase()].join('+');
}

/** Those whose label, head and keywords hold every word typed, in any order; all of them when nothing is typed. */
export function commandsMatching(commands: readonly Command[], typed: string): readonly Command[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return commands.filter(({ label, group, keywords }) => {
    const text = [label, group, ...keywords].join(' ').toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
