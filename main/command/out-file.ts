/** Files that an option of a command names to be written. */
import { existsSync } from 'node:fs';
import { listText } from '../../sim/wording/figures';
import { FileProblem } from '../files/file-problem';
import { writeAtomically } from '../files/write-atomically';
import type { Arguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { Refusal } from './refusal';

export interface OutFile {
  path: string;
  /** In small letters, one of those asked for. */
  ending: string;
}

/**
 * @param option its name without dashes; the command has a flag `force` beside it
 * @param endings what the name may end in: "pdf"
 * @returns null when it was not given
 * @throws {Refusal} for a name of another kind, or a file that is there already and is not to be written over
 */
export function outFile({ values, flags }: Arguments, option: string, endings: readonly string[]): OutFile | null {
  const path = values.get(option);
  if (path === undefined) return null;
  const shown = fitForTerminal(path);
  const ending = endings.find((one) => path.toLowerCase().endsWith(`.${one}`));
  if (ending === undefined) {
    const wanted = listText(endings.map((one) => `.${one}`)).replace(' and ', ' or ');
    throw new Refusal([`Option --${option} is "${shown}". Give a name that ends in ${wanted}.`]);
  }
  if (existsSync(path) && !flags.includes('force')) {
    throw new Refusal([`${shown} is there already and is kept. Give another name, or --force to write over it.`]);
  }
  return { path, ending };
}

/** @throws {Refusal} when it cannot be written */
export async function writeOut({ path }: OutFile, contents: string | Uint8Array): Promise<void> {
  try {
    await writeAtomically(path, contents);
  } catch (error) {
    if (error instanceof FileProblem) throw new Refusal([error.message]);
    throw error;
  }
}
