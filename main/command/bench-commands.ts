/** How long whole commands take, as a person starts them: npm, launcher, start-up and all. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defaultMethod } from '../../sim/project/defaults';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';

export interface CommandRow {
  name: string;
  seconds: number;
  wantedSeconds: number;
}

const TRIES = 3;

/** Five methods pulled up all at once, so that either rule has something to say about each. */
function fiveMethods(): Project {
  const project = exampleProject();
  const { assembly } = defaultMethod('');
  const ways = [...project.methods, { ...project.methods[0]!, name: 'Marked line again' }];
  return { ...project, methods: ways.map((method) => ({ ...method, assembly: { ...assembly, pullUpMm: 0.02 } })) };
}

/** Seconds from the start of the command to its end; the best of three, since other work only ever makes it slower. */
function timed(root: string, args: readonly string[]): number {
  const times = Array.from({ length: TRIES }, () => {
    const start = performance.now();
    const { status, error } = spawnSync('npm', ['run', '--silent', 'ringtrue', '--', ...args], {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
      // npm is a .cmd file on Windows, which only a shell can start.
      shell: process.platform === 'win32',
    });
    if (status !== 0) throw error ?? new Error(`ringtrue ${args.join(' ')} ended with exit code ${status}.`);
    return (performance.now() - start) / 1000;
  });
  return Math.min(...times);
}

/** @param root the folder of package.json */
export function benchCommands(root: string): CommandRow[] {
  const folder = mkdtempSync(join(tmpdir(), 'ringtrue-bench-'));
  const file = join(folder, 'five.ringtrue.json');
  try {
    writeFileSync(file, writeProject(fiveMethods()));
    const row = (name: string, wantedSeconds: number, ...args: string[]): CommandRow => {
      return { name, seconds: Number(timed(root, args).toFixed(2)), wantedSeconds };
    };
    const touch = ['--json', '--rule', 'touch', '--trials', '100000'];
    const contact = ['--json', '--rule', 'contact', '--trials', '20000'];
    return [
      row('predict, 5 methods × 20,000 rings by contact', 2.5, 'predict', file, ...contact),
      row('predict, 5 methods × 100,000 rings by touch', 2.5, 'predict', file, ...touch),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
