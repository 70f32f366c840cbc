import { statSync } from 'node:fs';
import { resolve } from 'node:path';

/**
 * The project file among the words a program was started with.
 *
 * @param words the arguments after the program (and, when run from a clone, after the folder it was started with)
 * @param folder what relative names are meant from
 * @returns its full path; the last word that is neither an option nor a folder; null when there is none
 */
export function startFileAmong(words: readonly string[], folder: string): string | null {
  const named = words.filter((word) => !word.startsWith('-')).map((word) => resolve(folder, word));
  return named.findLast((path) => !statSync(path, { throwIfNoEntry: false })?.isDirectory()) ?? null;
}
