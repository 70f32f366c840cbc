/** The local host as a program of its own: how it starts, what it opens, and that it ends and leaves nothing behind. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { delimiter, join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, ROOT } from '../../../main/ready.mjs';
import { exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { enter, sendRaw } from '../../support/raw-request';
import { scratchFolder } from '../../support/scratch-folder';

/** As `npm start` does it where Electron's runtime is not and a window can be shown. */
const WITH_DISPLAY = `
  const { serveUntilClosed } = await import(${JSON.stringify(join(ROOT, 'dist', 'main', 'local.js'))});
  const say = (line) => process.stdout.write(line + '\\n');
  await serveUntilClosed({ pagesFolder: ${JSON.stringify(join(ROOT, 'dist', 'renderer'))}, display: true, say });
`;
const OPENER = process.platform === 'darwin' ? 'open' : 'xdg-open';

/** Letting in the one who asks, and handing over the pages. */
const LETS_IN = 303;

const running: ChildProcess[] = [];

afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL');
});

class Program {
  readonly #child: ChildProcess;
  said = '';
  complained = '';
  /** The exit code, or the name of the signal that ended it. */
  readonly ended: Promise<number | string | null>;

  constructor(words: readonly string[], environment: NodeJS.ProcessEnv) {
    const { DISPLAY: _x, WAYLAND_DISPLAY: _wayland, ...rest } = process.env;
    this.#child = spawn(process.execPath, words, {
      env: { ...rest, ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    running.push(this.#child);
    this.#child.stdout?.on('data', (part) => {
      this.said += part;
    });
    this.#child.stderr?.on('data', (part) => {
      this.complained += part;
    });
    this.ended = new Promise((resolve) => {
      this.#child.on('close', (code, signal) => resolve(signal ?? code));
    });
  }

  pressCtrlC(): void {
    this.#child.kill('SIGINT');
  }

  /** The address it printed, once it has. */
  async address(): Promise<string> {
    const printed = () => /^Open this address .*: (http:\S+)$/m.exec(this.said)?.[1];
    await expect.poll(printed, { timeout: 60_000 }).toBeDefined();
    return printed() ?? '';
  }
}

function started(file: string, stateFolder: string): Program {
  return new Program([join(ROOT, 'main', 'start.mjs'), file], { RINGTRUE_STATE: stateFolder });
}

/** A program of the person's machine, in the words of JavaScript. */
function fake(folder: string, name: string, script: string): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, name);
  writeFileSync(path, `#!${process.execPath}\n${script}`, { mode: 0o755 });
  return path;
}

function withDisplay(browser: string, path = process.env.PATH): Program {
  const environment = { RINGTRUE_CHROMIUM: browser, RINGTRUE_STATE: scratchFolder(), PATH: path };
  return new Program(['--input-type=module', '-e', WITH_DISPLAY], environment);
}

function shortProject(): string {
  const file = join(scratchFolder(), 'piece.ringtrue.json');
  const project = exampleProject();
  writeFileSync(file, writeProject({ ...project, title: 'Bread bin', run: { ...project.run, trials: 2000 } }));
  return file;
}

async function statusOf(address: string): Promise<number> {
  const { origin, pathname } = new URL(address);
  return (await sendRaw(origin, { path: pathname })).status;
}

function isListening(address: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(Number(new URL(address).port), '127.0.0.1');
    socket.once('connect', () => resolve(true)).once('error', () => resolve(false));
    socket.once('connect', () => socket.destroy());
  });
}

const isAlive = (processNumber: number): boolean => {
  try {
    return process.kill(processNumber, 0);
  } catch {
    return false;
  }
};

/** What a fake program wrote down, once it has. */
async function noted(file: string): Promise<string> {
  await expect
    .poll(() => existsSync(file) && readFileSync(file, 'utf8').endsWith('\n'), { timeout: 20_000 })
    .toBe(true);
  return readFileSync(file, 'utf8').trim();
}

beforeAll(() => ensureBuilt(), 300_000);

describe('without a display', () => {
  it('prints the prediction and an address that answers, and Ctrl-C ends it and frees the port', async () => {
    const program = started(shortProject(), scratchFolder());
    const address = await program.address();
    expect(program.said).toContain('Bread bin');
    expect(program.said).toMatch(/^Use “.+”: .* pieces come out good enough/m);
    expect(program.said.indexOf('Bread bin')).toBeLessThan(program.said.indexOf('There is no display here'));
    const { origin } = new URL(address);
    expect((await sendRaw(origin, { path: '/' })).status).toBe(403);
    const cookie = await enter(origin, address);
    expect((await sendRaw(origin, { path: '/', headers: { cookie } })).text).toContain('<!doctype html>');
    const opened = await sendRaw(origin, { path: '/api/start-file', headers: { cookie } });
    expect(JSON.parse(opened.text)).toMatchObject({ name: 'piece.ringtrue.json' });
    program.pressCtrlC();
    expect(await program.ended).toBe(0);
    expect(program.complained).toBe('');
    expect(await isListening(address)).toBe(false);
  });

  it('runs twice side by side: ports, addresses and keys are apart, and either ends by itself', async () => {
    const stateFolder = scratchFolder();
    const programs = [started(shortProject(), stateFolder), started(shortProject(), stateFolder)] as const;
    const [first, second] = await Promise.all([programs[0].address(), programs[1].address()]);
    const [one, other] = [new URL(first), new URL(second)];
    expect(one.port).not.toBe(other.port);
    expect(one.pathname).not.toBe(other.pathname);
    expect(await statusOf(`${other.origin}${one.pathname}`)).toBe(403);
    const keys = { one: await enter(one.origin, first), other: await enter(other.origin, second) };
    // A browser sends both: cookies do not tell ports apart.
    const headers = { cookie: `${keys.one}; ${keys.other}` };
    expect((await sendRaw(other.origin, { path: '/', headers: { cookie: keys.one } })).status).toBe(403);
    expect((await sendRaw(one.origin, { path: '/', headers })).status).toBe(200);
    expect((await sendRaw(other.origin, { path: '/', headers })).status).toBe(200);
    programs[0].pressCtrlC();
    expect(await programs[0].ended).toBe(0);
    expect((await sendRaw(other.origin, { path: '/', headers })).status).toBe(200);
    programs[1].pressCtrlC();
    expect(await programs[1].ended).toBe(0);
  });
});

describe('with a display', () => {
  /** Notes its words and its process number, and is open until it is told to close. */
  function openBrowser(folder: string): string {
    return fake(
      folder,
      'fake-browser',
      `require('node:fs').writeFileSync(${JSON.stringify(join(folder, 'noted'))}, JSON.stringify([process.pid, ...process.argv.slice(2)]) + '\\n');
      process.on('SIGUSR2', () => process.exit(0));
      setTimeout(() => {}, 60_000);`,
    );
  }

  async function opened(folder: string) {
    const [processNumber, ...words] = JSON.parse(await noted(join(folder, 'noted'))) as [number, ...string[]];
    const word = (name: string) => words.find((each) => each.startsWith(`--${name}=`))?.slice(name.length + 3) ?? '';
    return { processNumber, address: word('app'), profile: word('user-data-dir') };
  }

  it('opens a window of its own by an address that lets in once, and ends with that window', async () => {
    const folder = scratchFolder();
    const program = withDisplay(openBrowser(folder));
    const { processNumber, address, profile } = await opened(folder);
    expect(await statusOf(address)).toBe(LETS_IN);
    expect(await statusOf(address)).toBe(403);
    expect(existsSync(profile)).toBe(true);
    process.kill(processNumber, 'SIGUSR2');
    expect(await program.ended).toBe(0);
    expect(program.said).toBe('Ringtrue is open in a window of fake-browser. Closing the window ends it.\n');
    expect(await isListening(address)).toBe(false);
    expect(existsSync(profile)).toBe(false);
  });

  it('closes its window at Ctrl-C', async () => {
    const folder = scratchFolder();
    const program = withDisplay(openBrowser(folder));
    const { processNumber, address } = await opened(folder);
    program.pressCtrlC();
    expect(await program.ended).toBe(0);
    expect(isAlive(processNumber)).toBe(false);
    expect(await isListening(address)).toBe(false);
  });

  const broken = (folder: string): string => fake(folder, 'broken-browser', 'process.exit(1);');

  it('asks the default browser where its own window does not come up, and leaves it open at Ctrl-C', async () => {
    const folder = scratchFolder();
    const note = join(folder, 'noted');
    fake(
      folder,
      OPENER,
      `require('node:fs').writeFileSync(${JSON.stringify(note)}, process.pid + ' ' + process.argv[2] + '\\n');
      setTimeout(() => {}, 60_000);`,
    );
    const program = withDisplay(broken(folder), `${folder}${delimiter}${process.env.PATH}`);
    const [processNumber, address = ''] = (await noted(note)).split(' ');
    try {
      expect(await statusOf(address)).toBe(LETS_IN);
      expect(await statusOf(await program.address())).toBe(LETS_IN);
      expect(program.said).toContain('broken-browser could not open a window.\nRingtrue is open in your browser.\n');
      program.pressCtrlC();
      expect(await program.ended).toBe(0);
      expect(await isListening(address)).toBe(false);
      expect(isAlive(Number(processNumber))).toBe(true);
    } finally {
      process.kill(Number(processNumber), 'SIGKILL');
    }
  });

  it.each(['fails', 'is absent'])('says the address where the opener %s as well', async (what) => {
    const folder = scratchFolder();
    const openers = join(folder, 'openers');
    if (what === 'fails') fake(openers, OPENER, 'process.exit(3);');
    const program = withDisplay(broken(folder), openers);
    const address = await program.address();
    expect(program.said).toMatch(/^broken-browser could not open a window\.\nOpen this address /m);
    expect(program.said).not.toContain('in your browser.');
    // It is for the person, who may need it more than once.
    for (let times = 0; times < 2; times++) expect(await statusOf(address)).toBe(LETS_IN);
    program.pressCtrlC();
    expect(await program.ended).toBe(0);
  });
});
