import { dialog, type IpcMainEvent, type IpcMainInvokeEvent, ipcMain } from 'electron';
import { CHANNELS } from '../contract/channels';
import type { HostProblem, OpenedFile, SavedFile } from '../contract/host';
import {
  CHANGED_ON_DISK_PAYLOAD,
  EXPORT_FILE_PAYLOAD,
  KEEP_RECOVERY_PAYLOAD,
  KEEP_VIEW_PAYLOAD,
  OPEN_DROPPED_PAYLOAD,
  PRINT_PDF_PAYLOAD,
  REOPEN_PAYLOAD,
  SAVE_PAYLOAD,
  SET_EDITED_PAYLOAD,
  SET_MENU_PAYLOAD,
  SET_PROGRESS_PAYLOAD,
} from '../contract/payloads';
import type { ProjectFiles } from '../files/project-files';
import { setMenu } from './menu';
import { isPagesAddress } from './pages-protocol';
import { sheetPdf } from './sheet-pdf';
import type { ShellWindow } from './window';
import { writeWhereAsked } from './write-where-asked';

const FILTERS = [{ name: 'Ringtrue project', extensions: ['json'] }];

/**
 * Answers the verbs of `Host` for the pages in our window, and for nobody else.
 *
 * @param startFile gives the path to open at the start, when the pages ask; from then on they take files from outside
 */
export function answerChannels(shellWindow: ShellWindow, files: ProjectFiles, startFile: () => string | null): void {
  const { browserWindow } = shellWindow;

  function checkSender(event: IpcMainInvokeEvent | IpcMainEvent): void {
    const frame = event.senderFrame;
    const isOurs = frame !== null && frame === browserWindow.webContents.mainFrame && isPagesAddress(frame.url);
    if (!isOurs) throw new Error('Only the pages of this program may ask.');
  }

  ipcMain.handle(CHANNELS.openedAtStart, async (event): Promise<OpenedFile | HostProblem | null> => {
    checkSender(event);
    const path = startFile();
    return path === null ? null : files.read(path);
  });

  ipcMain.handle(CHANNELS.open, async (event): Promise<OpenedFile | HostProblem | null> => {
    checkSender(event);
    const { filePaths } = await dialog.showOpenDialog(browserWindow, { properties: ['openFile'], filters: FILTERS });
    return filePaths[0] === undefined ? null : files.read(filePaths[0]);
  });

  ipcMain.handle(CHANNELS.openDropped, async (event, payload: unknown): Promise<OpenedFile | HostProblem> => {
    checkSender(event);
    return files.readDropped(OPEN_DROPPED_PAYLOAD.parse(payload));
  });

  ipcMain.handle(CHANNELS.save, async (event, payload: unknown): Promise<SavedFile | HostProblem | null> => {
    checkSender(event);
    const file = SAVE_PAYLOAD.parse(payload);
    if (file.place !== null) return files.save(file);
    const asked = { defaultPath: file.name, filters: FILTERS };
    const { filePath, canceled } = await dialog.showSaveDialog(browserWindow, asked);
    return canceled || !filePath ? null : files.saveAs(filePath, file.text);
  });

  ipcMain.handle(CHANNELS.reopen, async (event, payload: unknown) => {
    checkSender(event);
    return files.reopen(REOPEN_PAYLOAD.parse(payload));
  });

  ipcMain.handle(CHANNELS.changedOnDisk, async (event, payload: unknown): Promise<string | null> => {
    checkSender(event);
    return files.changedOnDisk(CHANGED_ON_DISK_PAYLOAD.parse(payload));
  });

  ipcMain.handle(CHANNELS.recent, async (event) => {
    checkSender(event);
    return files.recent();
  });

  ipcMain.handle(CHANNELS.keepRecovery, async (event, payload: unknown) => {
    checkSender(event);
    return files.keepRecovery(KEEP_RECOVERY_PAYLOAD.parse(payload));
  });

  ipcMain.handle(CHANNELS.recovery, async (event) => {
    checkSender(event);
    return files.recovery();
  });

  ipcMain.handle(CHANNELS.dropRecovery, async (event) => {
    checkSender(event);
    await files.dropRecovery();
  });

  ipcMain.handle(CHANNELS.printPdf, async (event, payload: unknown): Promise<SavedFile | HostProblem | null> => {
    checkSender(event);
    const { name, html } = PRINT_PDF_PAYLOAD.parse(payload);
    return writeWhereAsked(browserWindow, name, () => sheetPdf(html));
  });

  ipcMain.handle(CHANNELS.exportFile, async (event, payload: unknown): Promise<SavedFile | HostProblem | null> => {
    checkSender(event);
    const { name, bytes } = EXPORT_FILE_PAYLOAD.parse(payload);
    return writeWhereAsked(browserWindow, name, async () => bytes);
  });

  ipcMain.handle(CHANNELS.keptView, async (event) => {
    checkSender(event);
    return files.keptView();
  });

  ipcMain.handle(CHANNELS.keepView, async (event, payload: unknown) => {
    checkSender(event);
    await files.keepView(KEEP_VIEW_PAYLOAD.parse(payload));
  });

  ipcMain.on(CHANNELS.setMenu, (event, payload: unknown) => {
    checkSender(event);
    setMenu(SET_MENU_PAYLOAD.parse(payload), (id) => browserWindow.webContents.send(CHANNELS.onMenuChosen, id));
  });

  ipcMain.on(CHANNELS.setProgress, (event, payload: unknown) => {
    checkSender(event);
    // Below 0 nothing is shown.
    browserWindow.setProgressBar(SET_PROGRESS_PAYLOAD.parse(payload) ?? -1);
  });

  ipcMain.on(CHANNELS.setEdited, (event, payload: unknown) => {
    checkSender(event);
    shellWindow.edited = SET_EDITED_PAYLOAD.parse(payload);
    browserWindow.setDocumentEdited(shellWindow.edited);
  });
}
