import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { z } from 'zod';
import { StateFile } from './state-file';

const MOST_KEPT = 8;
const PATHS = z.array(z.string());

/** The project files opened or saved on this machine not long ago, in a file of the user's. */
export class RecentFiles {
  readonly #file: StateFile;

  constructor(stateFolder: string) {
    this.#file = new StateFile(stateFolder, 'recent.json');
  }

  /** Puts a file first. */
  add(path: string): Promise<void> {
    const first = resolve(path);
    return this.#file.write((before) => {
      const others = pathsIn(before).filter((known) => known !== first);
      return JSON.stringify([first, ...others].slice(0, MOST_KEPT), null, 2);
    });
  }

  /** @returns the full paths of those that are still there, the latest first */
  async list(): Promise<string[]> {
    const found: string[] = [];
    for (const path of pathsIn(await this.#file.read())) {
      if ((await stat(path).catch(() => null))?.isFile()) found.push(path);
    }
    return found;
  }
}

function pathsIn(text: string | null): string[] {
  try {
    return PATHS.parse(JSON.parse(text ?? '[]'));
  } catch {
    return [];
  }
}
