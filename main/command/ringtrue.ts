/** The command line: picks the command and turns what happens into an exit code. */

import { safeText } from '../../sim/project/problem';
import { CannotPrint } from '../print/print-pdf';
import { accuracy } from './accuracy';
import { aim } from './aim';
import { budget } from './budget';
import { check } from './check';
import { compare } from './compare';
import { example } from './example';
import { fitForTerminal } from './fit-for-terminal';
import { HELP } from './help';
import type { Command } from './method-command';
import { predict } from './predict';
import { Refusal } from './refusal';
import { report } from './report';
import { season } from './season';
import { stock } from './stock';
import { StoppedEarly } from './stoppable-run';
import type { CommandIo } from './streams';
import { testCuts } from './test-cuts';

export type { CommandIo } from './streams';

// Not written as one literal: a bundler would take that for a file of its own and copy it.
const WORKER_FILE = './task-worker.js';
const WORKER_PROGRAM = new URL(WORKER_FILE, import.meta.url);

const COMMANDS: Readonly<Record<string, Command>> = {
  predict,
  compare,
  budget,
  'test-cuts': testCuts,
  aim,
  accuracy,
  season,
  stock,
  report,
  example,
  check,
};

/**
 * Runs one command.
 *
 * @param argv what follows the program's name
 * @returns the exit code: 0 fine, 2 wrong file or options (a line for each problem on standard error, nothing on standard
 *   output), 1 anything else, a run that was stopped among it
 */
export async function runCommand(argv: readonly string[], io: CommandIo = processIo()): Promise<number> {
  try {
    await dispatch(argv, io);
    return 0;
  } catch (error) {
    if (error instanceof Refusal) {
      io.stderr.write(error.lines.map((line) => `${safeText(line, Number.POSITIVE_INFINITY)}\n`).join(''));
      return 2;
    }
    if (error instanceof CannotPrint || error instanceof StoppedEarly) {
      io.stderr.write(fitForTerminal(`${error.message}\n`));
      return 1;
    }
    const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
    io.stderr.write(fitForTerminal(`Ringtrue broke off: ${why}\n`));
    return 1;
  }
}

async function dispatch(argv: readonly string[], io: CommandIo): Promise<void> {
  const [name, ...args] = argv;
  const commands = Object.keys(COMMANDS).join(', ');
  if (name === undefined) throw new Refusal([`No command is given. Give one of ${commands}, or --help.`]);
  if (name === '--help' || name === '-h' || name === 'help') {
    io.stdout.write(HELP.ringtrue);
    return;
  }
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined) {
    throw new Refusal([`"${safeText(name)}" is not a command. Give one of ${commands}, or --help.`]);
  }
  if (args.includes('--help') || args.includes('-h')) io.stdout.write(HELP[name as keyof typeof HELP]);
  else await command(args, io, WORKER_PROGRAM);
}

/** The process's own streams. Whoever reads them may leave early: that ends the program quietly. */
function processIo(): CommandIo {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(0);
      throw error;
    });
  }
  const interrupted = (): AbortSignal => {
    const stop = new AbortController();
    process.once('SIGINT', () => stop.abort());
    return stop.signal;
  };
  return { stdout: process.stdout, stderr: process.stderr, stdin: process.stdin, interrupted };
}
