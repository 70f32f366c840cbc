/**
 * Gets a bare clone ready: packages installed, program built, a browser for the tests.
 * Plain Node without packages, because it runs before the first install. Everything it says goes to standard error,
 * and it says nothing when there is nothing to do.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium, isExecutable, NotReady } from './chromium.mjs';

/** The folder of the clone. */
export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
export const BUILD_STAMP = join(ROOT, 'dist', '.built');

/** @param {string} line */
function say(line) {
  process.stderr.write(`${line}\n`);
}

/**
 * Runs a program with its output on standard error.
 *
 * @param {string} program
 * @param {string[]} programArguments
 * @param {NodeJS.ProcessEnv} [extraEnvironment]
 * @returns {boolean} whether it ended well
 */
function run(program, programArguments, extraEnvironment = {}) {
  const result = spawnSync(program, programArguments, {
    cwd: ROOT,
    env: { ...process.env, ...extraEnvironment },
    stdio: ['ignore', 2, 2],
    // npm and npx are .cmd files on Windows, which only a shell can start.
    shell: process.platform === 'win32',
  });
  return result.status === 0;
}

/**
 * @param {string} path
 * @returns {string | null}
 */
function readIfThere(path) {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

/**
 * Lets one process at a time install or build: two commands started together in a fresh clone would
 * otherwise pull the folders from under each other.
 *
 * @template T
 * @param {() => T | Promise<T>} work
 * @returns {Promise<T>}
 */
async function alone(work) {
  const lock = join(ROOT, 'dist', '.busy');
  mkdirSync(dirname(lock), { recursive: true });
  for (;;) {
    try {
      writeFileSync(lock, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
      if (isLeftBehind(lock)) rmSync(lock, { force: true });
      else await new Promise((resolve) => setTimeout(resolve, 200));
    }
  }
  const release = () => rmSync(lock, { force: true });
  process.once('exit', release);
  try {
    return await work();
  } finally {
    release();
    process.removeListener('exit', release);
  }
}

/**
 * @param {string} lock
 * @returns {boolean} whether the process that made the lock has ended
 */
function isLeftBehind(lock) {
  const holder = Number(readIfThere(lock));
  if (!holder) {
    // Empty: its owner is about to write its number, unless it died right there.
    const made = statSync(lock, { throwIfNoEntry: false });
    return made !== undefined && Date.now() - made.mtimeMs > 10_000;
  }
  try {
    process.kill(holder, 0);
    return false;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ESRCH';
  }
}

/**
 * Whether node_modules holds what package-lock.json asks for. npm writes its own copy of the lock into
 * node_modules as the last act of an install, so that copy is the stamp.
 *
 * @returns {boolean}
 */
function isInstalled() {
  const wantedText = readIfThere(join(ROOT, 'package-lock.json'));
  const presentText = readIfThere(join(ROOT, 'node_modules', '.package-lock.json'));
  if (!wantedText || !presentText) return false;
  const wanted = JSON.parse(wantedText).packages;
  const present = JSON.parse(presentText).packages;
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === '') return true;
    const found = present[path];
    // Packages for other systems are optional and rightly absent.
    return found ? found.version === entry.version : entry.optional === true;
  });
}

/** @throws {NotReady} when Node is older than 20 */
function checkNode() {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 20) {
    throw new NotReady(`Node ${process.versions.node} is too old for Ringtrue. Install Node 20 or newer.`);
  }
}

/**
 * Installs the packages of the lock file unless they are there already.
 *
 * @throws {NotReady} when npm fails
 */
export async function ensureInstalled() {
  checkNode();
  if (isInstalled()) return;
  await alone(() => {
    if (isInstalled()) return;
    say('Installing the packages (once; about a minute) …');
    if (!run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'])) {
      throw new NotReady('The packages could not be installed. Check the network and run "npm ci" to see why.');
    }
  });
}

const BUILT_FROM = ['sim', 'main', 'renderer', 'package.json', 'package-lock.json', 'tsconfig.json'];

/**
 * @param {string} path relative to the root
 * @returns {string[]} one line for each file in it: path, size, time of change
 */
function describeFiles(path) {
  const stat = statSync(join(ROOT, path), { throwIfNoEntry: false });
  if (!stat) return [];
  if (!stat.isDirectory()) return [`${path} ${stat.size} ${stat.mtimeMs}`];
  return readdirSync(join(ROOT, path))
    .sort()
    .flatMap((name) => describeFiles(`${path}/${name}`));
}

/** @returns {string} a mark that changes when any source is added, changed or removed */
export function sourceMark() {
  return createHash('sha256').update(BUILT_FROM.flatMap(describeFiles).join('\n')).digest('hex');
}

/**
 * Builds dist/ unless it was built from the sources as they are now.
 *
 * @throws {NotReady} when the build fails; its own output says why
 */
export async function ensureBuilt() {
  const isBuilt = () => readIfThere(BUILD_STAMP) === sourceMark();
  if (isBuilt()) return;
  await alone(() => {
    if (isBuilt()) return;
    say('Building Ringtrue …');
    if (!run(process.execPath, ['main/build.mjs'])) throw new NotReady('The build failed; the lines above say why.');
  });
}

/**
 * A Chromium-family browser for the tests, fetched when there is none.
 *
 * @returns {Promise<string>} the path of its program
 * @throws {NotReady} when none can be had
 */
export async function ensureChromium() {
  const found = findChromium() ?? (await playwrightChromium());
  if (found) return found;
  return alone(async () => {
    const isRoot = process.getuid?.() === 0;
    if (isRoot && isExecutable('/usr/bin/apt-get')) {
      say('Installing Chromium with apt-get (once) …');
      const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
      // A package list that refreshes only in part may still have the browser.
      run('apt-get', ['update', '-q'], quiet);
      run('apt-get', ['install', '-q', '-y', 'chromium'], quiet);
      const packaged = findChromium();
      if (packaged) return packaged;
    }
    say('Fetching a Chromium for the tests (once) …');
    run('npx', ['playwright', 'install', ...(isRoot ? ['--with-deps'] : []), 'chromium']);
    const fetched = await playwrightChromium();
    if (fetched) return fetched;
    throw new NotReady(
      'No Chromium-family browser was found and none could be fetched. Install Chromium, or set RINGTRUE_CHROMIUM to its path.',
    );
  });
}

/** @returns {Promise<string | null>} the browser that Playwright fetched earlier, if it did */
async function playwrightChromium() {
  const { chromium } = await import('@playwright/test');
  const path = chromium.executablePath();
  return isExecutable(path) ? path : null;
}

/**
 * Runs a launcher's work and turns a NotReady into its one sentence and exit code 1.
 *
 * @param {() => Promise<void>} work
 */
export async function orSayWhy(work) {
  try {
    await work();
  } catch (error) {
    // By name: the built programs carry a copy of the class.
    if (!(error instanceof Error && error.name === 'NotReady')) throw error;
    say(error.message);
    process.exitCode = 1;
  }
}
