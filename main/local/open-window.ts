import { spawn } from 'node:child_process';
import { basename } from 'node:path';
import { findChromium } from '../chromium.mjs';
import { exitOf, startThrowawayBrowser } from './throwaway-browser';

/** A window of its own, whose closing can be noticed. */
export interface OwnWindow {
  /** The browser's program. */
  browser: string;
  /** Settles when the window is closed: `true` when it had been open, `false` when it never came up. */
  closed: Promise<boolean>;
  close(): void;
}

/** A browser that is gone this soon after its start, with a complaint, never showed a window. */
const CAME_UP_AFTER_MS = 5000;

/**
 * Opens the address in an installed Chromium-family browser, as a window without tabs and with a throw-away profile.
 *
 * @returns null when no such browser is installed
 */
export function openOwnWindow(address: string): OwnWindow | null {
  const browser = findChromium();
  if (!browser) return null;
  const started = Date.now();
  const flags = [`--app=${address}`, '--window-size=1360,900'];
  const { process: child, ended, gone } = startThrowawayBrowser(browser, 'window', flags, 'ignore');
  const closed = ended.then(async (code) => {
    const openMs = Date.now() - started;
    await gone;
    return code === 0 || openMs > CAME_UP_AFTER_MS;
  });
  return { browser: basename(browser), closed, close: () => child.kill() };
}

/** Opens the address in the default browser; false when that cannot be done. */
export async function openDefaultBrowser(address: string): Promise<boolean> {
  const [program, before] =
    process.platform === 'darwin'
      ? ['open', []]
      : process.platform === 'win32'
        ? ['rundll32', ['url.dll,FileProtocolHandler']]
        : ['xdg-open', []];
  const child = spawn(program, [...before, address], { stdio: 'ignore', detached: true });
  // What became the browser outlives this program, which does not wait for it.
  child.unref();
  const code = exitOf(child);
  // Some openers hand the address over and end, others become the browser.
  const stillOpen = new Promise<0>((resolve) => setTimeout(resolve, 3000, 0).unref());
  return (await Promise.race([code, stillOpen])) === 0;
}
