import { fileURLToPath } from 'node:url';
import { BrowserWindow, dialog } from 'electron';
import { PAGES_ORIGIN } from './pages-protocol';

/** The one window, and whether closing it would lose edits. */
export interface ShellWindow {
  browserWindow: BrowserWindow;
  edited: boolean;
}

/**
 * Opens the window on the pages. It shows itself when there is something to see.
 *
 * @param onEditsGivenUp called when the person closes it and agrees to lose the edits; the window waits for the end of it
 */
export function openShellWindow({ onEditsGivenUp }: { onEditsGivenUp: () => Promise<void> }): ShellWindow {
  const browserWindow = new BrowserWindow({
    width: 1360,
    height: 900,
    minWidth: 480,
    minHeight: 400,
    show: false,
    webPreferences: {
      preload: fileURLToPath(new URL('./preload.cjs', import.meta.url)),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
      spellcheck: false,
    },
  });
  const shellWindow: ShellWindow = { browserWindow, edited: false };
  browserWindow.once('ready-to-show', () => browserWindow.show());
  browserWindow.on('close', (event) => {
    if (!shellWindow.edited) return;
    event.preventDefault();
    if (mayLoseEdits(browserWindow)) void onEditsGivenUp().finally(() => browserWindow.destroy());
  });
  // The guard of the pages themselves is for browsers; here the question is asked above, in the system's own way.
  browserWindow.webContents.on('will-prevent-unload', (event) => event.preventDefault());
  browserWindow.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    const answer = dialog.showMessageBoxSync(browserWindow, {
      type: 'error',
      message: 'The page stopped working.',
      detail: `Edits up to about two seconds ago are kept and will be offered again (${reason}).`,
      buttons: ['Open it again', 'Quit'],
    });
    if (answer === 0) browserWindow.webContents.reload();
    else browserWindow.destroy();
  });
  void browserWindow.loadURL(`${PAGES_ORIGIN}/`);
  return shellWindow;
}

function mayLoseEdits(browserWindow: BrowserWindow): boolean {
  const answer = dialog.showMessageBoxSync(browserWindow, {
    type: 'question',
    message: 'The project has edits that are not saved.',
    detail: 'Closing the window loses them.',
    buttons: ['Keep editing', 'Close and lose the edits'],
    defaultId: 0,
    cancelId: 0,
  });
  return answer === 1;
}
