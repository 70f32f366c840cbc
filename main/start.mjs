/**
 * `npm start [-- FILE]`: gets the clone ready and opens the program, in Electron where its runtime can be had, else in a
 * browser window. Without a display it prints the example's prediction and the address to open.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Readable } from 'node:stream';
import { NotReady } from './chromium.mjs';
import { findElectron, hasDisplay } from './electron.mjs';
import { ensureBuilt, ensureInstalled, orSayWhy, ROOT } from './ready.mjs';

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}

/** @returns {string | undefined} the project file named on the command line, as a full path */
function namedFile() {
  const [file, ...more] = process.argv.slice(2);
  if (more.length > 0)
    throw new NotReady(`One file can be opened at the start, ${more.length + 1} were named. Name one.`);
  if (file === undefined) return undefined;
  const stoodIn = process.env.npm_lifecycle_event === 'start' ? process.env.INIT_CWD : undefined;
  const path = resolve(stoodIn ?? process.cwd(), file);
  if (!existsSync(path)) throw new NotReady(`${path} does not exist. Check the name and the folder.`);
  return path;
}

/** How soon a runtime that cannot run on this machine gives up. */
const CAME_UP_AFTER_MS = 5000;

/**
 * @param {string} program Electron's runtime
 * @param {string | undefined} file
 * @returns {Promise<boolean>} after the window is closed; false when it never came up
 */
async function runElectron(program, file) {
  const started = Date.now();
  // Chromium refuses to start its sandbox for the system's administrator.
  const sandbox = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(program, [...sandbox, ROOT, ...(file ? [file] : [])], { stdio: ['ignore', 'ignore', 'inherit'] });
  const [code] = await once(child, 'exit').catch(() => [1]);
  return code === 0 || Date.now() - started > CAME_UP_AFTER_MS;
}

/**
 * @param {string} name a program in dist/main
 * @returns {Promise<any>} its exports
 */
function built(name) {
  return import(new URL(`../dist/main/${name}.js`, import.meta.url).href);
}

/**
 * Prints the methods side by side, of the file or else of the example.
 *
 * @param {string | undefined} file
 */
async function printComparison(file) {
  const { runCommand } = await built('ringtrue');
  if (file) {
    await runCommand(['compare', file]);
    return;
  }
  /** @type {string[]} */
  const example = [];
  await runCommand(['example'], {
    stdout: { write: (/** @type {string} */ text) => example.push(text) },
    stderr: process.stderr,
  });
  const streams = { stdout: process.stdout, stderr: process.stderr, stdin: Readable.from(example) };
  await runCommand(['compare', '-'], streams);
}

await orSayWhy(async () => {
  const startFile = namedFile();
  await ensureInstalled();
  await ensureBuilt();
  const display = hasDisplay();
  if (display) {
    const electron = findElectron(say);
    if (electron && (await runElectron(electron, startFile))) return;
    const why = electron ? 'did not start' : 'could not be fetched';
    say(`The Electron runtime ${why} on this machine, so Ringtrue opens in a browser window instead.`);
  } else {
    await printComparison(startFile);
    say('\nThere is no display here, so no window was opened.');
  }
  const { serveUntilClosed } = await built('local');
  await serveUntilClosed({ pagesFolder: join(ROOT, 'dist', 'renderer'), startFile, display, say });
});
