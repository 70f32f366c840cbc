/**
 * Electron's runtime. Its package comes without it and fetches it on demand, which a machine behind a strict network
 * cannot do; a failure is remembered, so that only the first start waits for it.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isExecutable } from './chromium.mjs';
import { ROOT } from './ready.mjs';

const PACKAGE = join(ROOT, 'node_modules', 'electron');
const FAILED_STAMP = join(ROOT, 'node_modules', '.electron-runtime-not-fetched');
const FETCH_AT_MOST_MS = 20_000;
const TRY_AGAIN_AFTER_MS = 24 * 60 * 60 * 1000;

/** @returns {string | null} the runtime's program, when it is here and complete */
export function presentRuntime() {
  try {
    const program = join(PACKAGE, 'dist', readFileSync(join(PACKAGE, 'path.txt'), 'utf8'));
    return isExecutable(program) ? program : null;
  } catch {
    return null;
  }
}

/** @returns {boolean} whether a window can be shown here */
export function hasDisplay() {
  if (process.platform !== 'linux') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/** @returns {string | null} why no window of Electron can be opened here, as half a sentence; null when one can */
export function whyNoElectron() {
  if (presentRuntime() === null) return 'whose runtime is not on this machine';
  return hasDisplay() ? null : 'whose runtime is here, but no display to show its window on';
}

/** @returns {boolean} whether fetching it failed not long ago */
function failedLately() {
  const stamp = statSync(FAILED_STAMP, { throwIfNoEntry: false });
  return stamp !== undefined && Date.now() - stamp.mtimeMs < TRY_AGAIN_AFTER_MS;
}

/**
 * Finds Electron's runtime, fetching it once if need be.
 *
 * @param {(line: string) => void} say takes each line meant for the person
 * @returns {string | null} the path of its program; null when it cannot be had here
 */
export function findElectron(say) {
  const present = presentRuntime();
  if (present || failedLately()) return present;
  say('Fetching the Electron runtime (once; 20 seconds at most) …');
  spawnSync(process.execPath, [join(PACKAGE, 'install.js')], { stdio: 'ignore', timeout: FETCH_AT_MOST_MS });
  const fetched = presentRuntime();
  if (fetched) rmSync(FAILED_STAMP, { force: true });
  else writeFileSync(FAILED_STAMP, '');
  return fetched;
}
