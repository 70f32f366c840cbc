/** From the file name on the command line to a project that can be computed. */

import type { Project } from '../../sim/project/document';
import { LARGEST_FILE_BYTES, sizeProblem } from '../../sim/project/file-size';
import { problemLine } from '../../sim/project/problem';
import { type ReadOutcome, readProject } from '../../sim/reading/read';
import { shortHoldWarning } from '../../sim/wording/cautions';
import { FileProblem } from '../files/file-problem';
import { readProjectFile } from '../files/read-project-file';
import { fitForTerminal } from './fit-for-terminal';
import { Refusal } from './refusal';
import type { CommandIo } from './streams';

/**
 * Warns on standard error of a hold length that endangers fingers, whatever is asked.
 *
 * @throws {Refusal} when the file cannot be read or is no project, a line for each problem
 */
export async function openProject(command: string, operands: readonly string[], io: CommandIo): Promise<Project> {
  const [path] = operands;
  if (path === undefined) {
    throw new Refusal([`No file is named. Give "ringtrue ${command} FILE", or - to read standard input.`]);
  }
  const outcome: ReadOutcome = readProject(path === '-' ? await readStandardInput(io) : await readFile(path));
  if (!outcome.ok) throw new Refusal(outcome.problems.map(problemLine));
  const short = shortHoldWarning(outcome.project);
  if (short !== null) io.stderr.write(fitForTerminal(`${short}\n`));
  return outcome.project;
}

async function readFile(path: string): Promise<string> {
  try {
    return await readProjectFile(path);
  } catch (error) {
    if (error instanceof FileProblem) throw new Refusal([error.message]);
    throw error;
  }
}

async function readStandardInput(io: CommandIo): Promise<string> {
  const name = 'Standard input';
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  for await (const piece of io.stdin ?? process.stdin) {
    const part = typeof piece === 'string' ? Buffer.from(piece) : piece;
    bytes += part.length;
    if (bytes > LARGEST_FILE_BYTES) throw new Refusal([sizeProblem(name, bytes) ?? name]);
    pieces.push(part);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces));
  } catch {
    throw new Refusal([`${name} is not UTF-8 text. Give a Ringtrue project file.`]);
  }
}
