import { basename, dirname, isAbsolute } from 'node:path';
import type { FileToSave, HostProblem, OpenedFile, RecentFile, SavedFile } from '../contract/host';
import { KeptView } from './kept-view';
import { asHostProblem, NOT_OPENED_HERE, Places } from './places';
import { RecentFiles } from './recent-files';
import { RecoverySlot } from './recovery-slot';

/** The verbs of `Host` that concern files, as far as every host with a disk does them alike. */
export class ProjectFiles {
  readonly #places = new Places();
  readonly #slot: RecoverySlot;
  readonly #recent: RecentFiles;
  readonly #view: KeptView;

  readonly #onUsed: (path: string) => void;

  /**
   * @param stateFolder the user's own folder for this program
   * @param onUsed told of every file that was opened or saved
   */
  constructor(stateFolder: string, onUsed: (path: string) => void = () => {}) {
    this.#onUsed = onUsed;
    this.#slot = new RecoverySlot(stateFolder);
    this.#recent = new RecentFiles(stateFolder);
    this.#view = new KeptView(stateFolder);
  }

  /** Reads a file that the person named or chose. */
  async read(path: string): Promise<OpenedFile | HostProblem> {
    const opened = await this.#places.read(path);
    if (!('problem' in opened)) await this.#used(path);
    return opened;
  }

  /**
   * The same for a file dropped on the window. Its path came by way of the pages' process, so that whatever else happens
   * there, it leads to nothing but files named as projects are.
   */
  async readDropped(path: string): Promise<OpenedFile | HostProblem> {
    if (!isAbsolute(path)) throw new Error('A dropped file has a full path.');
    if (path.toLowerCase().endsWith('.json')) return this.read(path);
    return { problem: `${basename(path)} does not end in .json. Drop a Ringtrue project file.` };
  }

  async #used(path: string): Promise<void> {
    await this.#recent.add(path);
    this.#onUsed(path);
  }

  async reopen(place: string): Promise<OpenedFile | HostProblem> {
    const path = this.#places.fileAt(place)?.path;
    return path === undefined ? NOT_OPENED_HERE : this.read(path);
  }

  changedOnDisk(place: string): Promise<string | null> {
    return this.#places.changedOnDisk(place);
  }

  async recent(): Promise<RecentFile[]> {
    const paths = await this.#recent.list();
    return paths.map((path) => ({ name: basename(path), folder: dirname(path), place: this.#places.issue(path) }));
  }

  /** Writes to a place that was given before. */
  async save({ place, text, overwrite }: FileToSave): Promise<SavedFile | HostProblem> {
    const saved = await this.#places.write(place ?? '', text, overwrite ?? false);
    const path = this.#places.fileAt(place ?? '')?.path;
    if (!('problem' in saved) && path !== undefined) await this.#used(path);
    return saved;
  }

  /** Writes to a file that the person chose just now and, where it exists, agreed to write over. */
  async saveAs(path: string, text: string): Promise<SavedFile | HostProblem> {
    return this.save({ name: basename(path), text, place: this.#places.issue(path), overwrite: true });
  }

  async keepRecovery({ name, text, place }: OpenedFile): Promise<HostProblem | null> {
    const file = place === null ? undefined : this.#places.fileAt(place);
    try {
      await this.#slot.keep({ name, text, path: file?.path ?? null, mark: file?.mark ?? null });
      return null;
    } catch (error) {
      return asHostProblem(error);
    }
  }

  async recovery(): Promise<OpenedFile | null> {
    const edits = await this.#slot.take();
    if (!edits) return null;
    const { name, text, path, mark } = edits;
    if (path === null) return { name, text, place: null };
    const place = this.#places.issue(path);
    const file = this.#places.fileAt(place);
    // What changed since the edits were made is noticed when they are saved.
    if (file) file.mark = mark;
    return { name, text, place };
  }

  async dropRecovery(): Promise<void> {
    await this.#slot.drop();
  }

  keptView(): Promise<string | null> {
    return this.#view.read();
  }

  keepView(text: string): Promise<void> {
    return this.#view.keep(text);
  }
}
