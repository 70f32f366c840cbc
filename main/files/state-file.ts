import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writeAtomically } from './write-atomically';

/** A text that the program remembers on this machine. A machine that keeps nothing is no reason to fail. */
export class StateFile {
  readonly #folder: string;
  readonly #file: string;
  /** Writing happens in the order asked for, and reading after it. */
  #last: Promise<unknown> = Promise.resolve();

  /** @param stateFolder the user's own folder for this program; made when absent */
  constructor(stateFolder: string, name: string) {
    this.#folder = stateFolder;
    this.#file = join(stateFolder, name);
  }

  /** @param change gives the new text for the one before, null when there was none */
  write(change: (before: string | null) => string): Promise<void> {
    const step = async () => {
      const text = change(await this.#text());
      await mkdir(this.#folder, { recursive: true, mode: 0o700 }).catch(() => {});
      await writeAtomically(this.#file, text).catch(() => {});
    };
    const next = this.#last.then(step);
    this.#last = next;
    return next;
  }

  /** null when nothing is kept. */
  async read(): Promise<string | null> {
    await this.#last;
    return this.#text();
  }

  #text(): Promise<string | null> {
    return readFile(this.#file, 'utf8').catch(() => null);
  }
}
