/**
 * What the pages may ask of the machine they run on. The Electron shell, the local browser host and the tests
 * each give one implementation, checked with `satisfies Host`; only verbs that every host can do belong here.
 */

/** A project file's text and where it came from. `place` is the host's own word for the file; null when it cannot be written back. */
export interface OpenedFile {
  name: string;
  text: string;
  place: string | null;
}

export interface SavedFile {
  name: string;
  place: string | null;
}

/** A refusal or failure in plain words, fit to be shown as it is. */
export interface HostProblem {
  problem: string;
}

export interface Host {
  readonly kind: 'electron' | 'browser' | 'test';
  /** The file named when the program was started, if any. */
  openedAtStart(): Promise<OpenedFile | HostProblem | null>;
  /** Lets the person choose a file; null when they changed their mind. */
  open(): Promise<OpenedFile | HostProblem | null>;
  /** Writes to `place` when it is given, else asks where; null when they changed their mind. */
  save(file: { name: string; text: string; place: string | null }): Promise<SavedFile | HostProblem | null>;
  /** Tells the window whether closing it now would lose edits. */
  setEdited(edited: boolean): void;
}
