/** Where a Chromium-family browser is on this machine. Plain Node, no packages: it also runs before the first install. */
import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** A wish that cannot be granted on this machine, in one sentence for the person in front of it. */
export class NotReady extends Error {
  /** @override */
  name = 'NotReady';
}

const NAMES_ON_PATH = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'brave-browser',
];

const MAC_APPS = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser'];

const WINDOWS_PROGRAMS = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
  'Chromium\\Application\\chrome.exe',
];

/**
 * @param {string} path
 * @returns {boolean} whether it is a file this user may run
 */
export function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** @returns {string[]} every place worth a look on this system, the likeliest first */
function likelyPlaces() {
  const environment = process.env;
  if (process.platform === 'win32') {
    const roots = [environment.ProgramFiles, environment['ProgramFiles(x86)'], environment.LOCALAPPDATA];
    return WINDOWS_PROGRAMS.flatMap((program) => roots.flatMap((root) => (root ? [join(root, program)] : [])));
  }
  const folders = [...(environment.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin', '/snap/bin'];
  const onPath = NAMES_ON_PATH.flatMap((name) => folders.filter(Boolean).map((folder) => join(folder, name)));
  if (process.platform !== 'darwin') return onPath;
  return [...MAC_APPS.map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`), ...onPath];
}

/**
 * The browser named by RINGTRUE_CHROMIUM, else the first one installed; null when there is none.
 *
 * @returns {string | null}
 * @throws {NotReady} when RINGTRUE_CHROMIUM names something that cannot be run
 */
export function findChromium() {
  const named = process.env.RINGTRUE_CHROMIUM;
  if (named) {
    if (isExecutable(named)) return named;
    throw new NotReady(
      `RINGTRUE_CHROMIUM is ${named}, which is not a program. Give the path of a Chromium-family browser.`,
    );
  }
  return likelyPlaces().find(isExecutable) ?? null;
}
