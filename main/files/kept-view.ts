import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { LARGEST_VIEW_CHARACTERS } from '../contract/payloads';
import { writeAtomically } from './write-atomically';

/** How the person likes to look at things, as the pages wrote it down, in a file of the user's. */
export class KeptView {
  readonly #folder: string;
  readonly #file: string;
  #last: Promise<unknown> = Promise.resolve();

  constructor(stateFolder: string) {
    this.#folder = stateFolder;
    this.#file = join(stateFolder, 'view.json');
  }

  /** The latest text wins. A machine that keeps nothing is no reason to fail. */
  keep(text: string): Promise<void> {
    const step = async () => {
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
    const text = await readFile(this.#file, 'utf8').catch(() => null);
    return text === null || text.length > LARGEST_VIEW_CHARACTERS ? null : text;
  }
}
