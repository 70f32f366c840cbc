import { randomBytes } from 'node:crypto';
import { basename, resolve } from 'node:path';
import type { HostProblem, OpenedFile, SavedFile } from '../contract/host';
import { FileProblem } from './file-problem';
import { readProjectFile } from './read-project-file';
import { writeAtomically } from './write-atomically';

/**
 * The files that the pages may write back. A page never sees or names a path: it gets an unguessable word for each
 * file the person chose, and only that word opens the way to it.
 */
export class Places {
  readonly #paths = new Map<string, string>();

  /** @returns the word for this file, the same one each time */
  issue(path: string): string {
    const wanted = resolve(path);
    for (const [place, known] of this.#paths) if (known === wanted) return place;
    const place = randomBytes(24).toString('base64url');
    this.#paths.set(place, wanted);
    return place;
  }

  /** Reads the file at `path` and issues a place for it; a failure comes back as a sentence. */
  async read(path: string): Promise<OpenedFile | HostProblem> {
    try {
      const text = await readProjectFile(path);
      return { name: basename(path), text, place: this.issue(path) };
    } catch (error) {
      return asHostProblem(error);
    }
  }

  /** Writes to a place issued before; a failure, or a place never issued, comes back as a sentence. */
  async write(place: string, text: string): Promise<SavedFile | HostProblem> {
    const path = this.#paths.get(place);
    if (path === undefined) {
      return { problem: 'This file was not opened here, so it is not written. Save it under a name of your choice.' };
    }
    try {
      await writeAtomically(path, text);
      return { name: basename(path), place };
    } catch (error) {
      return asHostProblem(error);
    }
  }
}

function asHostProblem(error: unknown): HostProblem {
  if (error instanceof FileProblem) return { problem: error.message };
  throw error;
}
