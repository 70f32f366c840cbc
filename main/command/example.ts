/** `ringtrue example`: a worked project file to start from. */
import { existsSync } from 'node:fs';
import { EXAMPLES } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';
import { FileProblem } from '../files/file-problem';
import { writeAtomically } from '../files/write-atomically';
import { oneOf, readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { Refusal } from './refusal';
import type { CommandIo } from './streams';

export async function example(args: readonly string[], io: CommandIo): Promise<void> {
  const given = readArguments('example', args, { which: 'value', out: 'value', force: 'flag' }, 0);
  const names = Object.keys(EXAMPLES);
  const which = oneOf(given, 'which', names) ?? names[0] ?? '';
  const make = EXAMPLES[which];
  if (make === undefined) throw new Error(`The example ${which} is missing.`);
  const text = writeProject(make());
  const path = given.values.get('out');
  if (path === undefined) {
    io.stdout.write(text);
    return;
  }
  const shown = fitForTerminal(path);
  if (existsSync(path) && !given.flags.includes('force')) {
    throw new Refusal([`${shown} is there already and is kept. Give another name, or --force to write over it.`]);
  }
  try {
    await writeAtomically(path, text);
  } catch (error) {
    if (error instanceof FileProblem) throw new Refusal([error.message]);
    throw error;
  }
  io.stdout.write(`Wrote ${shown}.\n`);
}
