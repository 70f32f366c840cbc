import { fileURLToPath } from 'node:url';
import { BrowserWindow, dialog, screen } from 'electron';
import { keepWindowPlace, readWindowPlace } from '../files/window-place';
import { PAGES_ORIGIN } from './pages-protocol';

/** The one window, and whether closing it would lose edits. */
export interface ShellWindow {
  browserWindow: BrowserWindow;
  edited: boolean;
}

interface ShellWindowOptions {
  /** Called when the person closes it and agrees to lose the edits; the window waits for the end of it. */
  onEditsGivenUp: () => Promise<void>;
  /** Where the window keeps its place on the screen. */
  placeFile: string;
}

const FIRST_PLACE = { width: 1360, height: 900, isMaximized: false };

/** Opens the window on the pages, where it was when it was closed last. It shows itself when there is something to see. */
export function openShellWindow({ onEditsGivenUp, placeFile }: ShellWindowOptions): ShellWindow {
  const areas = screen.getAllDisplays().map(({ workArea }) => workArea);
  const { isMaximized, ...bounds } = readWindowPlace(placeFile, areas) ?? FIRST_PLACE;
  const browserWindow = new BrowserWindow({
    ...bounds,
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
  browserWindow.once('ready-to-show', () => {
    if (isMaximized) browserWindow.maximize();
    browserWindow.show();
  });
  const keepPlace = (): void =>
    keepWindowPlace(placeFile, { ...browserWindow.getNormalBounds(), isMaximized: browserWindow.isMaximized() });
  browserWindow.on('close', (event) => {
    keepPlace();
    if (!shellWindow.edited) return;
    event.preventDefault();
    if (mayLoseEdits(browserWindow)) void onEditsGivenUp().finally(() => browserWindow.destroy());
  });
  // The guard of the pages themselves is for browsers; here the question is asked above, in the system's own way.
  browserWindow.webContents.on('will-prevent-unload', (event) => event.preventDefault());
  browserWindow.on('unresponsive', () => {
    const answer = dialog.showMessageBoxSync(browserWindow, {
      type: 'warning',
      message: 'The page does not answer.',
      detail: 'Long work may take a moment. Edits up to about two seconds ago are kept.',
      buttons: ['Wait', 'End the page'],
      defaultId: 0,
      cancelId: 0,
    });
    if (answer === 1) browserWindow.webContents.forcefullyCrashRenderer();
  });
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
