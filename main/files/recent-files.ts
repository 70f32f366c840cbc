import { mkdir, readFile, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { z } from 'zod';
import { writeAtomically } from './write-atomically';

const MOST_KEPT = 8;
const PATHS = z.array(z.string());

/** The project files opened or saved on this machine not long ago, in a file of the user's. */
export class RecentFiles {
  readonly #folder: string;
  readonly #file: string;
  #last: Promise<unknown> = Promise.resolve();

  constructor(stateFolder: string) {
    this.#folder = stateFolder;
    this.#file = join(stateFolder, 'recent.json');
  }

  /** Puts a file first. A machine that keeps no list is no reason to fail. */
  add(path: string): Promise<void> {
    const step = async () => {
      const first = resolve(path);
      const paths = [first, ...(await this.#read()).filter((known) => known !== first)].slice(0, MOST_KEPT);
      await mkdir(this.#folder, { recursive: true, mode: 0o700 }).catch(() => {});
      await writeAtomically(this.#file, JSON.stringify(paths, null, 2)).catch(() => {});
    };
    const next = this.#last.then(step);
    this.#last = next;
    return next;
  }

  /** @returns the full paths of those that are still there, the latest first */
  async list(): Promise<string[]> {
    await this.#last;
    const found: string[] = [];
    for (const path of await this.#read()) {
      if ((await stat(path).catch(() => null))?.isFile()) found.push(path);
    }
    return found;
  }

  async #read(): Promise<string[]> {
    try {
      return PATHS.parse(JSON.parse(await readFile(this.#file, 'utf8')));
    } catch {
      return [];
    }
  }
}
