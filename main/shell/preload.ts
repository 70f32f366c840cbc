/** Runs between the shell and the pages: gives the pages the verbs of `Host`, and nothing else of Electron. */
import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { CHANNELS } from '../contract/channels';
import type { Host, HostProblem, OpenedFile } from '../contract/host';

/** What came from outside before the pages were there to take it; the last one counts. */
let wanted: OpenedFile | HostProblem | null = null;
let takeWanted = (answer: OpenedFile | HostProblem): void => {
  wanted = answer;
};
ipcRenderer.on(CHANNELS.onFileWanted, (_event, answer: OpenedFile | HostProblem) => takeWanted(answer));

const host = {
  kind: 'electron',
  openedAtStart: () => ipcRenderer.invoke(CHANNELS.openedAtStart),
  open: () => ipcRenderer.invoke(CHANNELS.open),
  // Only here is it known where a file lies, and only of one that the person dropped or chose: a file that a page made
  // lies nowhere, and a page cannot send on a channel by itself.
  async openDropped(file) {
    const path = webUtils.getPathForFile(file);
    return path === '' ? null : ipcRenderer.invoke(CHANNELS.openDropped, path);
  },
  reopen: (place) => ipcRenderer.invoke(CHANNELS.reopen, place),
  changedOnDisk: (place) => ipcRenderer.invoke(CHANNELS.changedOnDisk, place),
  recent: () => ipcRenderer.invoke(CHANNELS.recent),
  save: (file) => ipcRenderer.invoke(CHANNELS.save, file),
  keepRecovery: (edits) => ipcRenderer.invoke(CHANNELS.keepRecovery, edits),
  recovery: () => ipcRenderer.invoke(CHANNELS.recovery),
  dropRecovery: () => ipcRenderer.invoke(CHANNELS.dropRecovery),
  printPdf: (sheet) => ipcRenderer.invoke(CHANNELS.printPdf, sheet),
  exportFile: (file) => ipcRenderer.invoke(CHANNELS.exportFile, file),
  keptView: () => ipcRenderer.invoke(CHANNELS.keptView),
  keepView: (text) => ipcRenderer.invoke(CHANNELS.keepView, text),
  setMenu: (commands) => ipcRenderer.send(CHANNELS.setMenu, commands),
  onMenuChosen(take) {
    ipcRenderer.removeAllListeners(CHANNELS.onMenuChosen);
    ipcRenderer.on(CHANNELS.onMenuChosen, (_event, id: string) => take(id));
  },
  onFileWanted(take) {
    takeWanted = take;
    if (wanted) take(wanted);
    wanted = null;
  },
  setProgress: (share) => ipcRenderer.send(CHANNELS.setProgress, share),
  setEdited: (edited) => ipcRenderer.send(CHANNELS.setEdited, edited),
} satisfies Host;

// The bridge hands the pages a frozen copy.
contextBridge.exposeInMainWorld('ringtrueHost', host);
