import { type ChildProcess, type StdioOptions, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const QUIET_FLAGS = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

export interface ThrowawayBrowser {
  process: ChildProcess;
  /** Settles with its exit code; null when it was killed or could not be started. */
  ended: Promise<number | null>;
  /** Settles when its profile is removed as well. */
  gone: Promise<void>;
}

/**
 * Starts a Chromium-family browser with a profile of its own, which goes when the browser ends.
 *
 * @param program the browser's path
 * @param purpose a word for the profile's name
 */
export function startThrowawayBrowser(
  program: string,
  purpose: string,
  flags: readonly string[],
  stdio: StdioOptions,
): ThrowawayBrowser {
  const profile = mkdtempSync(join(tmpdir(), `ringtrue-${purpose}-`));
  // Chromium refuses to start its sandbox for the system's administrator; the other flag spares them the notice of it.
  const sandbox = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox', '--test-type'] : [];
  const words = [...flags, ...QUIET_FLAGS, ...sandbox, `--user-data-dir=${profile}`];
  const browser = spawn(program, words, { stdio });
  const ended = exitOf(browser);
  return { process: browser, ended, gone: ended.then(() => removeProfile(profile)) };
}

/** @returns the exit code; null when it was killed or could not be started */
export async function exitOf(child: ChildProcess): Promise<number | null> {
  try {
    const [code] = (await once(child, 'exit')) as [number | null];
    return code;
  } catch {
    return null;
  }
}

/** The browser's last processes write into it for a moment after the first has ended. */
async function removeProfile(profile: string): Promise<void> {
  for (let tries = 0; tries < 20; tries += 1) {
    try {
      await rm(profile, { recursive: true, force: true });
      return;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
  }
}
