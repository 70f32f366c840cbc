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
  /** Set when the file is not as it was last read or saved here: the person decides what becomes of it. */
  because?: 'changed on disk';
}

export interface FileToSave extends OpenedFile {
  /** Write even over a file that somebody else changed. */
  overwrite?: boolean;
}

/** A project file opened or saved on this machine not long ago. */
export interface RecentFile {
  name: string;
  /** Its folder, to be shown. */
  folder: string;
  place: string;
}

/** A page of HTML that holds all it needs, to be printed as its own rules say. */
export interface SheetToPrint {
  /** For the file, ending in .pdf. */
  name: string;
  html: string;
}

/** One command of the pages, as the window's own menu shows it. */
export interface MenuCommand {
  id: string;
  label: string;
  /** The head it stands under. */
  group: string;
  /** "CommandOrControl+Shift+Z"; null when it has no keys. */
  shortcut: string | null;
  /** Whether it does anything just now. */
  applies: boolean;
}

/** Something made of the project for use elsewhere: a table, a picture, a prediction. */
export interface FileToExport {
  /** Its ending says what it is: .csv, .svg, .png or .json. */
  name: string;
  bytes: Uint8Array<ArrayBuffer>;
}

export interface Host {
  readonly kind: 'electron' | 'browser' | 'test';
  /** The file named when the program was started, if any. */
  openedAtStart(): Promise<OpenedFile | HostProblem | null>;
  /** Lets the person choose a file; null when they changed their mind. */
  open(): Promise<OpenedFile | HostProblem | null>;
  /** Opens a file dropped on the window from the place it lies at; null where the host is not told that place. */
  openDropped(file: File): Promise<OpenedFile | HostProblem | null>;
  /** Reads a file that was open here, or is among the recent ones, as it is now. */
  reopen(place: string): Promise<OpenedFile | HostProblem>;
  /**
   * Looks whether a file is still as it was last read or saved here: null when it is, or cannot be looked at, else one
   * sentence that it was changed. Each change is told once.
   */
  changedOnDisk(place: string): Promise<string | null>;
  /** The files that can be reopened, the latest first. */
  recent(): Promise<readonly RecentFile[]>;
  /** Writes to `place` when it is given, else asks where; null when they changed their mind. */
  save(file: FileToSave): Promise<SavedFile | HostProblem | null>;
  /** Keeps unsaved edits aside, in case the program ends before they are saved; null when that was done. */
  keepRecovery(edits: OpenedFile): Promise<HostProblem | null>;
  /** Edits kept aside by a window that ended without saving them; they stay kept. */
  recovery(): Promise<OpenedFile | null>;
  /** Throws away what `keepRecovery` kept or `recovery` gave: it is saved, or the person does not want it. */
  dropRecovery(): Promise<void>;
  /** Makes a PDF of a sheet and lets the person keep it; null when they changed their mind. */
  printPdf(sheet: SheetToPrint): Promise<SavedFile | HostProblem | null>;
  /** Lets the person keep a file that the program does not read again; null when they changed their mind. */
  exportFile(file: FileToExport): Promise<SavedFile | HostProblem | null>;
  /** What `keepView` kept, also by a former start; null when nothing is kept. */
  keptView(): Promise<string | null>;
  /** Keeps on this machine how the person likes to look at things, as text that the pages alone understand. */
  keepView(text: string): Promise<void>;
  /** Shows the commands in the window's own menu in place of those before. A window without a menu leaves it at that. */
  setMenu(commands: readonly MenuCommand[]): void;
  /** From now on tells which command was chosen in the menu, in place of whoever was told before. */
  onMenuChosen(take: (id: string) => void): void;
  /** From now on hands over files that are opened from outside while the program runs, in place of whoever took them before. */
  onFileWanted(take: (answer: OpenedFile | HostProblem) => void): void;
  /** Shows beside the program's picture how far long work has come, 0…1; null when there is none. */
  setProgress(share: number | null): void;
  /** Tells the window whether closing it now would lose edits. */
  setEdited(edited: boolean): void;
}
