import { randomBytes } from 'node:crypto';
import { chmod, open, readdir, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { asFileProblem } from './file-problem';

/** A name for a file that is being written beside `path`, and to be moved over it. */
export function partFileBeside(path: string): string {
  return join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.part`);
}

/**
 * Writes a file so that, whatever happens, either the old or the new contents are there, never half of one:
 * a new file beside it, forced to the disk, then moved over the old one. A link keeps pointing at the same file.
 *
 * @param path the file to write; made when absent
 * @param contents text is written as UTF-8
 * @throws {FileProblem} when it cannot be written; the old file is then untouched
 */
export async function writeAtomically(path: string, contents: string | Uint8Array): Promise<void> {
  try {
    const target = await realpath(path).catch(() => path);
    const mode = await stat(target).then(
      (found) => found.mode & 0o777,
      () => null,
    );
    const beside = partFileBeside(target);
    try {
      const handle = await open(beside, 'wx');
      try {
        await handle.writeFile(contents, 'utf8');
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
    await syncFolder(dirname(target));
  } catch (error) {
    throw asFileProblem('writing', path, error);
  }
}

/** Without this a power cut could take the move back. Windows cannot open a folder and needs none of it. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => {});
  await handle?.close();
}

/** A part file this old belongs to a program that was killed while it wrote. */
const LEFT_BEHIND_AFTER_MS = 60_000;

/** Removes what a program killed while writing `path` left beside it. */
export async function removeLeftParts(path: string): Promise<void> {
  const folder = dirname(path);
  const start = `.${basename(path)}.`;
  for (const name of await readdir(folder).catch(() => [])) {
    if (!name.startsWith(start) || !/\.[0-9a-f]{12}\.part$/.test(name)) continue;
    const part = join(folder, name);
    const found = await stat(part).catch(() => null);
    if (found && Date.now() - found.mtimeMs > LEFT_BEHIND_AFTER_MS) await rm(part, { force: true });
  }
}
