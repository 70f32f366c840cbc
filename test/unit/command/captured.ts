import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { runCommand } from '../../../main/command/ringtrue';
import { exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { scratchFolder } from '../../support/scratch-folder';

export interface Captured {
  code: number;
  stdout: string;
  stderr: string;
}

/** Runs one command inside the test, with its streams captured. */
export async function captured(
  argv: readonly string[],
  stdin: readonly (string | Uint8Array)[] = [],
  stop?: AbortSignal,
): Promise<Captured> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runCommand(argv, {
    stdout: { write: (text) => out.push(text) },
    stderr: { write: (text) => err.push(text) },
    stdin: (async function* () {
      yield* stdin;
    })(),
    ...(stop && { interrupted: () => stop }),
  });
  return { code, stdout: out.join(''), stderr: err.join('') };
}

/** A project file for the running test; gone after it. */
export function fileOf(content: unknown): string {
  const path = join(scratchFolder(), 'work.ringtrue.json');
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content, null, 2));
  return path;
}

/** The example, in a file of its own. */
export const lantern = (): string => fileOf(writeProject(exampleProject()));

/** What a command that goes well writes. */
export async function textOf(...argv: string[]): Promise<string> {
  const { code, stdout, stderr } = await captured(argv);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(stdout).not.toMatch(/NaN|undefined|Infinity|\[object/);
  return stdout;
}

export const objectOf = async (...argv: string[]) => JSON.parse(await textOf(...argv, '--json'));
