import type { FileToExport, FileToSave, Host, MenuCommand, OpenedFile } from '../../main/contract/host';

/** A host that keeps everything in memory, and what it was asked. */
export interface MemoryHost extends Host {
  readonly saved: FileToSave[];
  readonly exported: FileToExport[];
  /** The edits kept aside just now. */
  kept: OpenedFile | null;
  view: string | null;
  menu: readonly MenuCommand[];
  /** What was shown of long work, in order. */
  readonly progress: (number | null)[];
}

/** @param verbs what a test wants answered otherwise */
export function memoryHost(verbs: Partial<Host> = {}): MemoryHost {
  const host: MemoryHost = {
    kind: 'test',
    saved: [],
    exported: [],
    kept: null,
    view: null,
    menu: [],
    progress: [],
    openedAtStart: async () => null,
    open: async () => null,
    openDropped: async () => null,
    reopen: async () => ({ problem: 'This file was not opened here. Open it.' }),
    changedOnDisk: async () => null,
    recent: async () => [],
    async save(file) {
      host.saved.push(file);
      return { name: file.name, place: file.place };
    },
    async keepRecovery(edits) {
      host.kept = edits;
      return null;
    },
    recovery: async () => host.kept,
    async dropRecovery() {
      host.kept = null;
    },
    printPdf: async ({ name }) => ({ name, place: null }),
    async exportFile(file) {
      host.exported.push(file);
      return { name: file.name, place: null };
    },
    keptView: async () => host.view,
    async keepView(text) {
      host.view = text;
    },
    setMenu(commands) {
      host.menu = commands;
    },
    onMenuChosen() {},
    onFileWanted() {},
    setProgress(share) {
      host.progress.push(share);
    },
    setEdited() {},
  };
  return Object.assign(host, verbs);
}
