import type { Host } from '../../main/contract/host';
import { exportSizeProblem } from '../../sim/export/file-size';

declare global {
  interface Window {
    /** Put there by the Electron shell before the pages start; absent in a browser. */
    readonly ringtrueHost?: Host;
  }
}

/** What a failure inside the shell looks like to the person; the cause is in the shell's own output. */
const FAILED = { problem: 'The program failed to do this. Try again, or save under another name and start it again.' };

/** @param bridge what the shell put into the window */
export function electronHost(bridge: Host): Host {
  return {
    kind: 'electron',
    openedAtStart: () => bridge.openedAtStart().catch(() => FAILED),
    open: () => bridge.open().catch(() => FAILED),
    openDropped: (file) => bridge.openDropped(file).catch(() => FAILED),
    reopen: (place) => bridge.reopen(place).catch(() => FAILED),
    changedOnDisk: (place) => bridge.changedOnDisk(place).catch(() => null),
    recent: () => bridge.recent().catch(() => []),
    save: (file) => bridge.save(file).catch(() => FAILED),
    keepRecovery: (edits) => bridge.keepRecovery(edits).catch(() => FAILED),
    recovery: () => bridge.recovery().catch(() => null),
    dropRecovery: () => bridge.dropRecovery().catch(() => {}),
    printPdf: (sheet) => bridge.printPdf(sheet).catch(() => FAILED),
    async exportFile(file) {
      const problem = exportSizeProblem(file.name, file.bytes.length);
      return problem ? { problem } : bridge.exportFile(file).catch(() => FAILED);
    },
    keptView: () => bridge.keptView().catch(() => null),
    keepView: (text) => bridge.keepView(text).catch(() => {}),
    setMenu: (commands) => bridge.setMenu(commands),
    onMenuChosen: (take) => bridge.onMenuChosen(take),
    onFileWanted: (take) => bridge.onFileWanted(take),
    setProgress: (share) => bridge.setProgress(share),
    setEdited: (edited) => bridge.setEdited(edited),
  } satisfies Host;
}
