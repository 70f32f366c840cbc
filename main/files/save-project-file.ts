import { createHash } from 'node:crypto';
import { readFile, realpath, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { asFileProblem, FileProblem } from './file-problem';
import { keepPreviousVersion } from './previous-version';
import { removeLeftParts, writeAtomically } from './write-atomically';

/** The file is not as it was when it was last read or written here. */
export class ChangedOnDisk extends FileProblem {}

/** What a file's bytes are known by; a text stands for its bytes in UTF-8. */
export function bytesMark(bytes: string | Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** @returns one sentence for the person */
export function changedSentence(path: string): string {
  return `${basename(path)} was changed by another program since it was opened or saved here.`;
}

/**
 * @param path a file that need not be there
 * @returns the mark of the bytes it holds now; null when there is none or it cannot be read
 */
export async function markNow(path: string): Promise<string | null> {
  try {
    // As at opening: a pipe that took the file's place would keep us waiting.
    return (await stat(path)).isFile() ? bytesMark(await readFile(path)) : null;
  } catch {
    return null;
  }
}

/**
 * Writes a project file whole and keeps the version before it beside it, under the name `previousVersionOf` gives.
 *
 * @param path the file to write; made when absent
 * @param text its new text
 * @param seen the mark of the bytes it should still hold; null when the person agreed to write over whatever is there
 * @throws {ChangedOnDisk} when it holds other bytes; nothing is written
 * @throws {FileProblem} when it cannot be written, as a whole or its previous version; the file is then untouched
 */
export async function saveProjectFile(path: string, text: string, seen: string | null): Promise<void> {
  try {
    const target = await realpath(path).catch(() => path);
    const found = await stat(target).catch(() => null);
    if (found?.isFile()) {
      // Moving a file over another asks only the folder, so what the file itself says must be looked at.
      if ((found.mode & 0o222) === 0) throw new FileProblem(`${path} is marked read-only. Save under another name.`);
      const before = bytesMark(await readFile(target));
      if (seen !== null && before !== seen) {
        throw new ChangedOnDisk(
          `${changedSentence(path)} Write over it, save under another name, or open it as it is now.`,
        );
      }
      if (before !== bytesMark(text)) await keepPreviousVersion(target);
    }
    await writeAtomically(target, text);
    await removeLeftParts(target);
  } catch (error) {
    throw asFileProblem('writing', path, error);
  }
}
