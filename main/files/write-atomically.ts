import { randomBytes } from 'node:crypto';
import { chmod, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { asFileProblem } from './file-problem';

/**
 * Writes a text file so that, whatever happens, either the old or the new text is there, never half of one:
 * a new file beside it, forced to the disk, then moved over the old one. A link keeps pointing at the same file.
 *
 * @param path the file to write; made when absent
 * @param text its new text, written as UTF-8
 * @throws {FileProblem} when it cannot be written; the old file is then untouched
 */
export async function writeAtomically(path: string, text: string): Promise<void> {
  try {
    const target = await realpath(path).catch(() => path);
    const mode = await stat(target).then(
      (found) => found.mode & 0o777,
      () => null,
    );
    const beside = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}.part`);
    try {
      const handle = await open(beside, 'wx');
      try {
        await handle.writeFile(text, 'utf8');
        await handle.sync();
      } finally {
        await handle.close();
      }
      if (mode !== null) await chmod(beside, mode);
      await rename(beside, target);
    } catch (error) {
      await rm(beside, { force: true });
      throw error;
    }
  } catch (error) {
    throw asFileProblem('writing', path, error);
  }
}
