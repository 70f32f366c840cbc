/** How the keys of a command are pressed, written and spoken. */

export interface Shortcut {
  key: string;
  /** Ctrl, on a Mac the command key. */
  mod: boolean;
  shift: boolean;
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
