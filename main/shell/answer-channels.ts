import { dialog } from 'electron';
import { CHANNELS } from '../contract/channels';
import type { ProjectFiles } from '../files/project-files';
import { type Answers, listenToPages, type Orders } from './listen-to-pages';
import { setMenu } from './menu';
import { sheetPdf } from './sheet-pdf';
import type { ShellWindow } from './window';
import { writeWhereAsked } from './write-where-asked';

const FILTERS = [{ name: 'Ringtrue project', extensions: ['json'] }];

/**
 * Answers the verbs of `Host` for the pages in our window.
 *
 * @param startFile gives the path to open at the start, when the pages ask; from then on they take files from outside
 */
export function answerChannels(shellWindow: ShellWindow, files: ProjectFiles, startFile: () => string | null): void {
  const { browserWindow } = shellWindow;
  const answers: Answers = {
    async openedAtStart() {
      const path = startFile();
      return path === null ? null : files.read(path);
    },
    async open() {
      const { filePaths } = await dialog.showOpenDialog(browserWindow, { properties: ['openFile'], filters: FILTERS });
      return filePaths[0] === undefined ? null : files.read(filePaths[0]);
    },
    openDropped: (path) => files.readDropped(path),
    async save(file) {
      if (file.place !== null) return files.save(file);
      const asked = { defaultPath: file.name, filters: FILTERS };
      const { filePath, canceled } = await dialog.showSaveDialog(browserWindow, asked);
      return canceled || !filePath ? null : files.saveAs(filePath, file.text);
    },
    reopen: (place) => files.reopen(place),
    changedOnDisk: (place) => files.changedOnDisk(place),
    recent: () => files.recent(),
    keepRecovery: (edits) => files.keepRecovery(edits),
    recovery: () => files.recovery(),
    dropRecovery: () => files.dropRecovery(),
    printPdf: ({ name, html }) => writeWhereAsked(browserWindow, name, () => sheetPdf(html)),
    exportFile: ({ name, bytes }) => writeWhereAsked(browserWindow, name, async () => bytes),
    keptView: () => files.keptView(),
    keepView: (text) => files.keepView(text),
  };
  const orders: Orders = {
    setMenu(commands) {
      setMenu(commands, (id) => browserWindow.webContents.send(CHANNELS.onMenuChosen, id));
    },
    setProgress(share) {
      // Below 0 nothing is shown.
      browserWindow.setProgressBar(share ?? -1);
    },
    setEdited(edited) {
      shellWindow.edited = edited;
      browserWindow.setDocumentEdited(edited);
    },
  };
  listenToPages(browserWindow, answers, orders);
}
