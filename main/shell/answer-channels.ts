import { dialog, type IpcMainEvent, type IpcMainInvokeEvent, ipcMain } from 'electron';
import { CHANNELS } from '../contract/channels';
import type { HostProblem, OpenedFile, SavedFile } from '../contract/host';
import { SAVE_PAYLOAD, SET_EDITED_PAYLOAD } from '../contract/payloads';
import type { Places } from '../files/places';
import { isPagesAddress } from './pages-protocol';
import type { ShellWindow } from './window';

const FILTERS = [{ name: 'Ringtrue project', extensions: ['json'] }];

/** Answers the verbs of `Host` for the pages in our window, and for nobody else. */
export function answerChannels(shellWindow: ShellWindow, places: Places, startFile: string | null): void {
  const { browserWindow } = shellWindow;

  function checkSender(event: IpcMainInvokeEvent | IpcMainEvent): void {
    const frame = event.senderFrame;
    const isOurs = frame !== null && frame === browserWindow.webContents.mainFrame && isPagesAddress(frame.url);
    if (!isOurs) throw new Error('Only the pages of this program may ask.');
  }

  ipcMain.handle(CHANNELS.openedAtStart, async (event): Promise<OpenedFile | HostProblem | null> => {
    checkSender(event);
    return startFile === null ? null : places.read(startFile);
  });

  ipcMain.handle(CHANNELS.open, async (event): Promise<OpenedFile | HostProblem | null> => {
    checkSender(event);
    const { filePaths } = await dialog.showOpenDialog(browserWindow, { properties: ['openFile'], filters: FILTERS });
    return filePaths[0] === undefined ? null : places.read(filePaths[0]);
  });

  ipcMain.handle(CHANNELS.save, async (event, payload: unknown): Promise<SavedFile | HostProblem | null> => {
    checkSender(event);
    const { name, text, place } = SAVE_PAYLOAD.parse(payload);
    if (place !== null) return places.write(place, text);
    const { filePath, canceled } = await dialog.showSaveDialog(browserWindow, { defaultPath: name, filters: FILTERS });
    return canceled || !filePath ? null : places.write(places.issue(filePath), text);
  });

  ipcMain.on(CHANNELS.setEdited, (event, payload: unknown) => {
    checkSender(event);
    shellWindow.edited = SET_EDITED_PAYLOAD.parse(payload);
    browserWindow.setDocumentEdited(shellWindow.edited);
  });
}
