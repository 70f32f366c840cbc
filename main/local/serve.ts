/** The local host as a program: serve the pages, show them, and end when the window or the terminal says so. */
import { stateFolder } from '../files/state-folder';
import { type LocalHost, startLocalHost } from './local-host';
import { openDefaultBrowser, openOwnWindow } from './open-window';

export { startLocalHost };

export interface ServeOptions {
  pagesFolder: string;
  startFile?: string | undefined;
  /** Whether this machine can show a window. */
  display: boolean;
  /** Takes each line meant for the person. */
  say: (line: string) => void;
}

/**
 * Serves until the window that was opened is closed, or until Ctrl-C. Where no window of its own can be opened, the
 * default browser is asked; where there is none either, the address is said.
 */
export async function serveUntilClosed({ pagesFolder, startFile, display, say }: ServeOptions): Promise<void> {
  const host = await startLocalHost({ pagesFolder, startFile, stateFolder: stateFolder() });
  const stop = stopSignal();
  try {
    if (!display) return await sayAddress(host, say, stop);
    const window = openOwnWindow(host.address('once'));
    if (window) {
      say(`Ringtrue is open in a window of ${window.browser}. Closing the window ends it.`);
      const cameUp = await Promise.race([window.closed, stop.then(() => null)]);
      if (cameUp === null) window.close();
      if (cameUp !== false) {
        await window.closed;
        return;
      }
      say(`${window.browser} could not open a window.`);
    }
    if (await openDefaultBrowser(host.address('once'))) say('Ringtrue is open in your browser.');
    await sayAddress(host, say, stop);
  } finally {
    await host.close();
  }
}

async function sayAddress(host: LocalHost, say: (line: string) => void, stop: Promise<void>): Promise<void> {
  say(`Open this address in a browser on this machine: ${host.address('often')}`);
  say('Ctrl-C ends Ringtrue.');
  await stop;
}

function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });
}
