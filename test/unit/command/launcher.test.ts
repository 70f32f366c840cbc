/** The program as a person starts it: another process, real streams, real exit codes. */
import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { scratchFolder } from '../../support/scratch-folder';

const LAUNCHER = fileURLToPath(new URL('../../../main/ringtrue.mjs', import.meta.url));

interface Ended {
  /** The signal's name where one ended the program. */
  code: number | string | null;
  stdout: string;
  stderr: string;
}

interface Circumstances {
  stdin?: string;
  /** false: the program's output is closed before it has written anything. */
  listens?: boolean;
  /** When Ctrl-C is pressed, counted from when the program has read its input. */
  interruptedAfterMs?: number;
}

function launched(
  args: readonly string[],
  { stdin = '', listens = true, interruptedAfterMs }: Circumstances = {},
): Promise<Ended> {
  const child = spawn(process.execPath, [LAUNCHER, ...args], { stdio: ['pipe', 'pipe', 'pipe'] });
  let [stdout, stderr] = ['', ''];
  child.stdout.on('data', (part) => {
    stdout += part;
  });
  if (!listens) child.stdout.destroy();
  child.stderr.on('data', (part) => {
    stderr += part;
  });
  child.stdin.on('error', () => {});
  child.stdin.end(stdin, () => {
    if (interruptedAfterMs !== undefined) setTimeout(() => child.kill('SIGINT'), interruptedAfterMs);
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => resolve({ code: signal ?? code, stdout, stderr }));
  });
}

/** More than a pipe holds, so that all of it is on its way only when the program reads. */
const BLANKS = ' '.repeat(1_000_000);

/** Interrupted when it has been at work for some time and is far from done. */
const interrupted = (args: readonly string[], interruptedAfterMs = 1500): Promise<Ended> =>
  launched(args, { stdin: writeProject(exampleProject()) + BLANKS, interruptedAfterMs });

// The first start may have to build the program.
beforeAll(async () => {
  await launched(['--help']);
}, 300_000);

describe('the launcher', { timeout: 120_000 }, () => {
  it('predicts on worker threads and says nothing but one JSON object', async () => {
    const { code, stdout, stderr } = await launched(['predict', '-', '--json', '--trials', '6000', '--workers', '2'], {
      stdin: writeProject(exampleProject()),
    });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout.startsWith('{\n')).toBe(true);
    expect(JSON.parse(stdout).methods.map((method: { trials: number }) => method.trials)).toEqual([
      6000, 6000, 6000, 6000,
    ]);
  });

  it('refuses a wrong file with exit code 2 and leaves it as it was', async () => {
    const path = join(scratchFolder(), 'wrong.json');
    writeFileSync(path, writeProject(exampleProject()).replace('"sides": 12', '"sides": 2'));
    const before = readFileSync(path);
    expect(await launched(['predict', path, '--json'])).toEqual({
      code: 2,
      stdout: '',
      stderr: 'piece.sides: Number of sides 2 is below 3. Give the number of staves, a whole number from 3 to 60.\n',
    });
    expect(readFileSync(path)).toEqual(before);
  });

  it('refuses wrong options with exit code 2', async () => {
    const { code, stdout, stderr } = await launched(['predict', '--quick']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toBe('Option --quick is not known to predict. "ringtrue predict --help" lists the options.\n');
  });

  it('keeps what is done when it is interrupted: the rings so far, whole JSON, exit code 1, for the last method begun too', async () => {
    const args = ['predict', '-', '--json', '--trials', '10000000'];
    // A busy machine has no ring to show so soon, says so, and is given longer.
    let ended = await interrupted(args);
    for (const afterMs of [6000, 20_000]) {
      if (ended.stderr === 'Stopped before the first rings were done.\n') ended = await interrupted(args, afterMs);
    }
    const { code, stdout, stderr } = ended;
    const { methods } = JSON.parse(stdout);
    expect(methods.length).toBeGreaterThan(0);
    const last = methods.at(-1);
    expect(last.stopReason).toBe('cancelled');
    expect(last.trials).toBeGreaterThan(0);
    expect(last.trials).toBeLessThan(10_000_000);
    const missing = exampleProject().methods.slice(methods.length);
    const without = missing.length === 0 ? '' : ` Not begun: ${missing.map(({ name }) => name).join(', ')}.`;
    expect(stderr).toBe(`Stopped; the figures rest on the rings done so far.${without}\n`);
    expect(code).toBe(1);
  });

  it('ends quietly, with nothing half said, when a question that has no half answer is interrupted', async () => {
    // A shell tells the signal as exit code 130.
    expect(await interrupted(['accuracy', '-', '--yield', '0.95', '--trials', '10000000'])).toEqual({
      code: 'SIGINT',
      stdout: '',
      stderr: '',
    });
  });

  it('ends quietly when its reader leaves early', async () => {
    const { code, stderr } = await launched(['example'], { listens: false });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });
});
