/** What a command is, and which are meant by a few words. */
import type { Shortcut } from '../parts/shortcut';

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

/** Those whose label, head and keywords hold every word typed, in any order; all of them when nothing is typed. */
export function commandsMatching(commands: readonly Command[], typed: string): readonly Command[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return commands.filter(({ label, group, keywords }) => {
    const text = [label, group, ...keywords].join(' ').toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
