/** Start-up of the desktop program. */
import { fileURLToPath } from 'node:url';
import { app, dialog } from 'electron';
import { readPageFiles } from '../files/page-files';
import { ProjectFiles } from '../files/project-files';
import { answerChannels } from './answer-channels';
import { setMenu } from './menu';
import { registerPagesScheme, servePages } from './pages-protocol';
import { refuseOtherPages, refusePermissions } from './refusals';
import { startFileAmong } from './start-file';
import { openShellWindow } from './window';

const PAGES_FOLDER = fileURLToPath(new URL('../renderer', import.meta.url));

async function start(): Promise<void> {
  let startFile = startFileAmong(process.argv.slice(1), process.cwd());
  // macOS names the file in an event instead of an argument.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    startFile ??= path;
  });
  registerPagesScheme();
  refuseOtherPages();
  await app.whenReady();
  refusePermissions();
  setMenu([], () => {});
  servePages(await readPageFiles(PAGES_FOLDER));
  const files = new ProjectFiles(app.getPath('userData'));
  const shellWindow = openShellWindow({ onEditsGivenUp: () => files.dropRecovery() });
  answerChannels(shellWindow, files, startFile);
  app.on('second-instance', () => {
    if (shellWindow.browserWindow.isMinimized()) shellWindow.browserWindow.restore();
    shellWindow.browserWindow.focus();
  });
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
