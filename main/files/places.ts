import { randomBytes } from 'node:crypto';
import { basename, resolve } from 'node:path';
import type { HostProblem, OpenedFile, SavedFile } from '../contract/host';
import { FileProblem } from './file-problem';
import { readFileWithMark } from './read-project-file';
import { bytesMark, ChangedOnDisk, changedSentence, markNow, saveProjectFile } from './save-project-file';

/** A file that has a place, and the mark of its bytes as they were last read or written here; null when never. */
export interface PlacedFile {
  readonly path: string;
  mark: string | null;
  /** The mark of the bytes of which it was told last that they are other ones. */
  told: string | null;
}

/** What is said to a word that was never issued. */
export const NOT_OPENED_HERE: HostProblem = {
  problem: 'This file was not opened here, so it is not touched. Open it, or save under a name of your choice.',
};

/**
 * The files that the pages may write back. A page never sees or names a path: it gets an unguessable word for each
 * file the person chose, and only that word opens the way to it.
 */
export class Places {
  readonly #files = new Map<string, PlacedFile>();
  /** A look at a file while it is being written here would take our own bytes for somebody else's. */
  #last: Promise<unknown> = Promise.resolve();

  /** @returns the word for this file, the same one each time */
  issue(path: string): string {
    const wanted = resolve(path);
    for (const [place, { path: known }] of this.#files) if (known === wanted) return place;
    const place = randomBytes(24).toString('base64url');
    this.#files.set(place, { path: wanted, mark: null, told: null });
    return place;
  }

  /** @returns the file behind a word issued before, undefined for any other */
  fileAt(place: string): PlacedFile | undefined {
    return this.#files.get(place);
  }

  /** Reads the file at `path` and issues a place for it; a failure comes back as a sentence. */
  async read(path: string): Promise<OpenedFile | HostProblem> {
    try {
      const { text, mark } = await readFileWithMark(path);
      const place = this.issue(path);
      const file = this.#files.get(place);
      if (file) file.mark = mark;
      return { name: basename(path), text, place };
    } catch (error) {
      return asHostProblem(error);
    }
  }

  /** Says once of each change that the file holds other bytes than were last read or written here; null otherwise. */
  changedOnDisk(place: string): Promise<string | null> {
    return this.#inOrder(async () => {
      const file = this.#files.get(place);
      if (!file || file.mark === null) return null;
      const now = await markNow(file.path);
      if (now === file.mark) file.told = null;
      if (now === null || now === file.mark || now === file.told) return null;
      file.told = now;
      return changedSentence(file.path);
    });
  }

  /**
   * Writes to a place issued before; a failure, or a place never issued, comes back as a sentence.
   *
   * @param overwrite write even when the file is not as it was last read or written here
   */
  write(place: string, text: string, overwrite: boolean): Promise<SavedFile | HostProblem> {
    return this.#inOrder(() => this.#write(place, text, overwrite));
  }

  async #write(place: string, text: string, overwrite: boolean): Promise<SavedFile | HostProblem> {
    const file = this.#files.get(place);
    if (!file) return NOT_OPENED_HERE;
    try {
      // A file never seen here has no bytes that may be written over.
      await saveProjectFile(file.path, text, overwrite ? null : (file.mark ?? 'never seen'));
      file.mark = bytesMark(text);
      return { name: basename(file.path), place };
    } catch (error) {
      return asHostProblem(error);
    }
  }

  #inOrder<Value>(step: () => Promise<Value>): Promise<Value> {
    const next = this.#last.then(step, step);
    this.#last = next.catch(() => {});
    return next;
  }
}

export function asHostProblem(error: unknown): HostProblem {
  if (error instanceof ChangedOnDisk) return { problem: error.message, because: 'changed on disk' };
  if (error instanceof FileProblem) return { problem: error.message };
  throw error;
}
