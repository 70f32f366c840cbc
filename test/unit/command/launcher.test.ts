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
  code: number | null;
  stdout: string;
  stderr: string;
}

/** @param listens false: the program's output is closed before it has written anything */
function launched(args: readonly string[], stdin = '', listens = true): Promise<Ended> {
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
  child.stdin.end(stdin);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, stdout, stderr }));
  });
}

// The first start may have to build the program.
beforeAll(async () => {
  await launched(['--help']);
}, 300_000);

describe('the launcher', { timeout: 60_000 }, () => {
  it('predicts on worker threads and says nothing but one JSON object', async () => {
    const { code, stdout, stderr } = await launched(
      ['predict', '-', '--json', '--trials', '6000', '--workers', '2'],
      writeProject(exampleProject()),
    );
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

  it('ends quietly, with nothing half said, when it is interrupted', async () => {
    const args = ['predict', '-', '--json', '--trials', '10000000'];
    const child = spawn(process.execPath, [LAUNCHER, ...args], { stdio: ['pipe', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (part) => {
        said += part;
      });
    }
    child.stdin.end(writeProject(exampleProject()));
    const ended = new Promise((resolve) => child.on('close', (code, signal) => resolve({ code, signal })));
    // Long enough to be at work, far too short to be done.
    await new Promise((resolve) => setTimeout(resolve, 3000));
    child.kill('SIGINT');
    // A shell tells it as exit code 130.
    expect(await ended).toEqual({ code: null, signal: 'SIGINT' });
    expect(said).toBe('');
  });

  it('ends quietly when its reader leaves early', async () => {
    const { code, stderr } = await launched(['example'], '', false);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });
});
