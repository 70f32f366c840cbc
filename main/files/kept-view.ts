import { LARGEST_VIEW_CHARACTERS } from '../contract/payloads';
import { StateFile } from './state-file';

/** How the person likes to look at things, as the pages wrote it down, in a file of the user's. */
export class KeptView {
  readonly #file: StateFile;

  constructor(stateFolder: string) {
    this.#file = new StateFile(stateFolder, 'view.json');
  }

  /** The latest text wins. */
  keep(text: string): Promise<void> {
    return this.#file.write(() => text);
  }

  /** null when nothing is kept. */
  async read(): Promise<string | null> {
    const text = await this.#file.read();
    return text === null || text.length > LARGEST_VIEW_CHARACTERS ? null : text;
  }
}
