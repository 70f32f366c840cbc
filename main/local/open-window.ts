import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { findChromium } from '../chromium.mjs';
import { removeProfile } from './remove-profile';

/** A window of its own, whose closing can be noticed. */
export interface OwnWindow {
  /** The browser's program. */
  browser: string;
  /** Settles when the window is closed: `true` when it had been open, `false` when it never came up. */
  closed: Promise<boolean>;
  close(): void;
}

const FLAGS = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--window-size=1360,900',
];

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
  const profile = mkdtempSync(join(tmpdir(), 'ringtrue-window-'));
  // Chromium refuses to start its sandbox for the system's administrator.
  const sandbox = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox', '--test-type'] : [];
  const started = Date.now();
  const child = spawn(browser, [`--app=${address}`, `--user-data-dir=${profile}`, ...FLAGS, ...sandbox], {
    stdio: 'ignore',
  });
  const closed = ended(child).then(async (code) => {
    const openMs = Date.now() - started;
    await removeProfile(profile);
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
  const code = ended(child);
  // Some openers hand the address over and end, others become the browser.
  const stillOpen = new Promise<0>((resolve) => setTimeout(resolve, 3000, 0).unref());
  return (await Promise.race([code, stillOpen])) === 0;
}

/** @returns the exit code; null when it was killed or could not be started */
async function ended(child: ChildProcess): Promise<number | null> {
  try {
    const [code] = (await once(child, 'exit')) as [number | null];
    return code;
  } catch {
    return null;
  }
}
