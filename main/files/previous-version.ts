import { copyFile, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { partFileBeside } from './write-atomically';

const EXTENSION = '.ringtrue.json';

/** `piece.ringtrue.json` → `piece.previous.ringtrue.json`, in the same folder: it opens like any project. */
export function previousVersionOf(path: string): string {
  const name = basename(path);
  const extension = name.toLowerCase().endsWith(EXTENSION) ? name.slice(-EXTENSION.length) : extname(name);
  return join(dirname(path), `${name.slice(0, name.length - extension.length)}.previous${extension}`);
}

/** Keeps a copy of the file as it is, whole at every moment, in place of the copy kept before. */
export async function keepPreviousVersion(path: string): Promise<void> {
  const beside = partFileBeside(path);
  try {
    await copyFile(path, beside);
    const handle = await open(beside, 'r+');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, previousVersionOf(path));
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
