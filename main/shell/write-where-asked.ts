import { basename } from 'node:path';
import { type BrowserWindow, dialog } from 'electron';
import type { HostProblem, SavedFile } from '../contract/host';
import { asHostProblem } from '../files/places';
import { writeAtomically } from '../files/write-atomically';

/** What the kinds of files that leave the program are called in the system's dialog, by their endings. */
const KINDS: Readonly<Record<string, string>> = {
  csv: 'Table',
  svg: 'Drawing',
  png: 'Picture',
  json: 'Prediction',
  pdf: 'PDF',
};

/**
 * Asks the person where a file may go, and writes it there. It is not written back later, so it has no place.
 *
 * @param name proposed; its ending says what it is
 * @param make gives what is written, once it is known that it is wanted
 * @returns null when they changed their mind
 */
export async function writeWhereAsked(
  window: BrowserWindow,
  name: string,
  make: () => Promise<Uint8Array>,
): Promise<SavedFile | HostProblem | null> {
  const ending = name.slice(name.lastIndexOf('.') + 1).toLowerCase();
  const filters = [{ name: KINDS[ending] ?? ending, extensions: [ending] }];
  const { filePath, canceled } = await dialog.showSaveDialog(window, { defaultPath: name, filters });
  if (canceled || !filePath) return null;
  try {
    await writeAtomically(filePath, await make());
    return { name: basename(filePath), place: null };
  } catch (error) {
    return asHostProblem(error);
  }
}
