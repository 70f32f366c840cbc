/**
 * `npm run pack:check`: packs the program as for shipping, without making an installer, and checks what is in it and that
 * it starts. Where Electron's runtime is absent an empty stand-in takes its place, and the output says so.
 */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { NotReady } from '../main/chromium.mjs';
import { presentRuntime } from '../main/electron.mjs';
import { ensureBuilt, ensureInstalled, orSayWhy, ROOT } from '../main/ready.mjs';

const LARGEST_MB = 12;

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}

/** @param {boolean} holds @param {string} sentence what is shown when it does not */
function check(holds, sentence) {
  if (!holds) throw new NotReady(sentence);
}

/**
 * @param {string} folder
 * @returns {string} a folder that the packer takes for Electron's runtime
 */
function standInRuntime(folder) {
  const runtime = join(folder, 'runtime');
  mkdirSync(runtime);
  writeFileSync(join(runtime, 'electron'), '#!/bin/sh\nexit 1\n');
  chmodSync(join(runtime, 'electron'), 0o755);
  writeFileSync(join(runtime, 'version'), createRequire(import.meta.url)('electron/package.json').version);
  return runtime;
}

/**
 * @param {string} output
 * @param {string | null} runtime Electron's program; null when it is not here
 * @returns {Promise<string>} the archive that was packed
 */
async function pack(output, runtime) {
  const { build, Platform } = await import('electron-builder');
  await build({
    projectDir: ROOT,
    targets: Platform.current().createTarget('dir'),
    publish: 'never',
    config: {
      extends: join(ROOT, 'electron-builder.yml'),
      directories: { output },
      electronDist: runtime ? dirname(runtime) : standInRuntime(output),
      // Switches are set in the runtime itself; a stand-in has none.
      ...(runtime === null && { electronFuses: null }),
    },
  });
  const archive = readdirSync(output, { recursive: true }).find((path) => String(path).endsWith('app.asar'));
  check(archive !== undefined, 'Nothing was packed: there is no app.asar.');
  return join(output, String(archive));
}

/** @param {string[]} files as `/dist/main/shell.js` */
function checkContents(files) {
  for (const needed of [
    '/package.json',
    '/dist/main/shell.js',
    '/dist/main/preload.cjs',
    '/dist/renderer/index.html',
  ]) {
    check(files.includes(needed), `The package lacks ${needed}.`);
  }
  const mayShip = /^\/(package\.json|dist(\/(main|renderer)(\/.*)?)?)$/;
  const foreign = files.filter(
    (file) => !mayShip.test(file) || /\.(ts|tsx|map)$|\.test\.|\/bench\.js$|node_modules/.test(file),
  );
  check(foreign.length === 0, `The package holds what must not ship: ${foreign.slice(0, 5).join(', ')}.`);
}

/**
 * Starts the packed shell against the stand-in for the module `electron`, and asks for its first page.
 *
 * @param {string} app the folder the archive was taken out into
 * @param {string} stateFolder
 */
async function checkStart(app, stateFolder) {
  const register = new URL('../e2e/support/electron/register.mjs', import.meta.url).href;
  const child = fork(join(app, 'dist', 'main', 'shell.js'), [], {
    execArgv: ['--import', register],
    env: { ...process.env, RINGTRUE_STATE: stateFolder },
    serialization: 'advanced',
  });
  try {
    const page = await new Promise((resolve, reject) => {
      child.on('message', (/** @type {any} */ { what, about, error }) => {
        if (what === 'load') child.send({ id: 1, ask: 'page', about: { url: about, method: 'GET' } });
        if (what === 'answer') error === undefined ? resolve(about) : reject(new NotReady(error));
      });
      child.once('exit', (code) =>
        reject(new NotReady(`The packed program ended with ${code} before it showed a page.`)),
      );
    });
    const text = new TextDecoder().decode(page.body);
    check(page.status === 200 && text.includes('<div id="root">'), 'The packed program does not serve its first page.');
  } finally {
    child.removeAllListeners('exit');
    const ended = once(child, 'exit');
    if (child.kill()) await ended;
  }
}

await orSayWhy(async () => {
  await ensureInstalled();
  await ensureBuilt();
  const output = mkdtempSync(join(tmpdir(), 'ringtrue-package-'));
  try {
    const runtime = presentRuntime();
    const archive = await pack(output, runtime);
    const { extractAll, listPackage, statFile } = await import('@electron/asar');
    const files = listPackage(archive, { isPack: false }).map((file) => file.replaceAll('\\', '/'));
    checkContents(files);
    const bytes = files.reduce(
      (sum, file) => sum + (Number(Reflect.get(statFile(archive, file.slice(1)), 'size')) || 0),
      0,
    );
    const megabytes = bytes / 2 ** 20;
    check(megabytes < LARGEST_MB, `The package has ${megabytes.toFixed(1)} MB; ${LARGEST_MB} MB are plenty.`);
    const app = join(output, 'taken-out');
    extractAll(archive, app);
    await checkStart(app, output);
    const onWhat = runtime
      ? "Electron's own runtime beside it"
      : "an empty stand-in for Electron's runtime, which is not here";
    say(`Packed ${files.length} files, ${megabytes.toFixed(1)} MB, with ${onWhat}.`);
    say(
      'Its shell starts on a stand-in for the module "electron" and serves its first page. Electron itself was not run.',
    );
  } finally {
    rmSync(output, { recursive: true, force: true });
  }
});
