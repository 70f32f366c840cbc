/** Start-up of the desktop program. */
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, type BrowserWindow, dialog } from 'electron';
import { PROGRAM_VERSION } from '../../sim/version';
import { CHANNELS } from '../contract/channels';
import { readPageFiles } from '../files/page-files';
import { ProjectFiles } from '../files/project-files';
import { answerChannels } from './answer-channels';
import { setMenu } from './menu';
import { registerPagesScheme, servePages } from './pages-protocol';
import { refuseOtherPages, refusePermissions } from './refuse-foreign';
import { startFileAmong } from './start-file';
import { openShellWindow } from './window';

const ABOUT = 'Predicts how a ring of mitred staves will close. MIT licence.';
const PAGES_FOLDER = fileURLToPath(new URL('../renderer', import.meta.url));

async function start(): Promise<void> {
  let startFile = startFileAmong(process.argv.slice(1), process.cwd());
  // Until the pages ask what to open at the start, whatever is named is that; the last one counts.
  let openMore = (path: string): void => {
    startFile = path;
  };
  let browserWindow: BrowserWindow | null = null;
  // macOS names the file in an event instead of an argument.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    openMore(path);
  });
  app.on('second-instance', (_event, words, folder) => {
    if (browserWindow?.isMinimized()) browserWindow.restore();
    browserWindow?.focus();
    const path = startFileAmong(words.slice(1), folder);
    if (path !== null) openMore(path);
  });
  registerPagesScheme();
  refuseOtherPages();
  await app.whenReady();
  refusePermissions();
  setMenu([], () => {});
  servePages(await readPageFiles(PAGES_FOLDER));
  app.setAboutPanelOptions({ applicationName: 'Ringtrue', applicationVersion: PROGRAM_VERSION, copyright: ABOUT });
  const stateFolder = app.getPath('userData');
  const files = new ProjectFiles(stateFolder, (path) => app.addRecentDocument(path));
  const shellWindow = openShellWindow({
    onEditsGivenUp: () => files.dropRecovery(),
    placeFile: join(stateFolder, 'window.json'),
  });
  browserWindow = shellWindow.browserWindow;
  answerChannels(shellWindow, files, () => {
    openMore = (path) => void handOver(path);
    return startFile;
  });

  /** Gives a file to the pages of the window that is open already. */
  async function handOver(path: string): Promise<void> {
    shellWindow.browserWindow.webContents.send(CHANNELS.onFileWanted, await files.read(path));
  }
  app.on('window-all-closed', () => app.quit());
}

app.enableSandbox();
if (app.requestSingleInstanceLock()) {
  start().catch((error: unknown) => {
    dialog.showErrorBox('Ringtrue could not start', error instanceof Error ? error.message : String(error));
    app.exit(1);
  });
} else {
  app.quit();
}
