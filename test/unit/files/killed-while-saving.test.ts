/** A program that is killed while it saves leaves whole files behind: each the one it was writing or the one before. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { previousVersionOf } from '../../../main/files/previous-version';
import { numberedText, numberOf } from '../../support/numbered-text';
import { scratchFolder } from '../../support/scratch-folder';

/** The program saves so many files at once: one kill cuts them all short, each at another point of its save. */
const FILES = 8;
/** 25 kills cut 200 saves short; RINGTRUE_KILLS=200 takes the time for as many kills. */
const KILLS = Number(process.env.RINGTRUE_KILLS ?? 25);
const LATEST_KILL_MS = 60;

let saver = '';

beforeAll(async () => {
  const outDir = mkdtempSync(join(tmpdir(), 'ringtrue-saver-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root: dirname(outDir),
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL('../../support/save-in-a-loop.ts', import.meta.url)),
      target: 'node20',
      outDir,
      emptyOutDir: true,
      rolldownOptions: { output: { entryFileNames: 'saver.mjs' } },
    },
  });
  saver = join(outDir, 'saver.mjs');
}, 60_000);

afterAll(() => rmSync(dirname(saver), { recursive: true, force: true }));

interface Left {
  /** The last number that the program said was saved; 0 for none. */
  said: number;
  /** The numbers in the file and in the version before it; null for what is not whole. */
  file: number | null;
  previous: number | null;
  /** Files that were being written when the program was killed. */
  parts: number;
}

/** Lets the program save until a random moment after its first save, kills it, and looks at what is left of each file. */
async function killOnce(way: 'atomic' | 'plain', files: readonly string[]): Promise<Left[]> {
  const child = spawn(process.execPath, [saver, way, ...files], { stdio: ['ignore', 'pipe', 'inherit'] });
  let output = '';
  child.stdout.setEncoding('utf8').on('data', (piece: string) => {
    output += piece;
  });
  await once(child.stdout, 'data');
  await new Promise((resolve) => setTimeout(resolve, Math.random() * LATEST_KILL_MS));
  child.kill('SIGKILL');
  await once(child, 'close');
  const said = files.map(() => 0);
  for (const line of output.trimEnd().split('\n')) {
    const [place = 0, number = 0] = line.split(' ').map(Number);
    said[place] = number;
  }
  return files.map((file, place) => ({ said: said[place]!, ...whatIsLeft(file) }));
}

function whatIsLeft(file: string): Omit<Left, 'said'> {
  const previous = previousVersionOf(file);
  const parts = readdirSync(dirname(file)).filter((name) => name.endsWith('.part'));
  for (const part of parts) rmSync(join(dirname(file), part));
  return {
    file: numberOf(readFileSync(file, 'utf8')),
    previous: existsSync(previous) ? numberOf(readFileSync(previous, 'utf8')) : null,
    parts: parts.length,
  };
}

function newFile(): string {
  const file = join(scratchFolder(), 'piece.ringtrue.json');
  writeFileSync(file, numberedText(0, 100));
  writeFileSync(previousVersionOf(file), numberedText(0, 100));
  return file;
}

it(`loses nothing when ${KILLS * FILES} saves are cut short by ${KILLS} kills`, { timeout: 600_000 }, async () => {
  const files = Array.from({ length: FILES }, newFile);
  let inMidst = 0;
  for (let kill = 0; kill < KILLS; kill += 1) {
    for (const { said, file, previous, parts } of await killOnce('atomic', files)) {
      expect(file, 'the file is whole').not.toBeNull();
      expect(file, 'what was said to be saved is').toBeGreaterThanOrEqual(said);
      // Killed between keeping the former version and moving the new one in, both are the same.
      expect([file! - 1, file], 'the version before is whole').toContain(previous);
      if (parts > 0) inMidst += 1;
    }
  }
  // Many kills fell into the middle of a save, so this could have failed.
  expect(inMidst).toBeGreaterThan((KILLS * FILES) / 10);
});

it('would notice a file that is written in place', { timeout: 120_000 }, async () => {
  const files = Array.from({ length: FILES }, newFile);
  let half = 0;
  for (let kill = 0; kill < 100 && half === 0; kill += 1) {
    half = (await killOnce('plain', files)).filter(({ file }) => file === null).length;
  }
  expect(half).toBeGreaterThan(0);
});

it('keeps the file and the version before it when the disk takes only half of the new text', () => {
  const file = newFile();
  // A limit on the size of a file stops a write half-way, as a full disk does.
  const limited = `trap '' XFSZ; ulimit -f 16; exec "$@"`;
  const { stderr } = spawnSync('bash', ['-c', limited, 'bash', process.execPath, saver, 'atomic', file]);
  expect(stderr.toString()).toContain('cannot be written: the disk takes no file that large. Choose another disk.');
  expect(whatIsLeft(file)).toEqual({ file: 0, previous: 0, parts: 0 });
  expect(readdirSync(dirname(file)).sort()).toEqual(['piece.previous.ringtrue.json', 'piece.ringtrue.json']);
});
