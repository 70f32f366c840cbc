/** `ringtrue check`: whether a project file can be used. */
import { listText } from '../../sim/wording/figures';
import { readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { headTexts } from './predict';
import type { CommandIo } from './streams';

export async function check(args: readonly string[], io: CommandIo): Promise<void> {
  const given = readArguments('check', args, {}, 1);
  const project = await openProject('check', given.operands, io);
  const { sides, slopeDeg } = project.piece;
  const names = listText(project.methods.map((method) => `“${method.name}”`));
  const count = project.methods.length;
  const summary =
    `The file is fine: ${sides} sides, slope ${slopeDeg}°, ` +
    `${count} ${count === 1 ? 'method' : 'methods'}: ${names}.`;
  io.stdout.write(fitForTerminal(`${[summary, ...headTexts(project)].join('\n\n')}\n`));
}
