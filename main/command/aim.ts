/** `ringtrue aim`: the deliberate offset of the tilt that makes most pieces good. */
import type { BestAim } from '../../sim/decide/aim';
import { ringGeometry } from '../../sim/geometry/ring';
import { aimSentences, aimTable } from '../../sim/wording/aim';
import { CAUTIONS_COMMAND_LINE } from '../../sim/wording/cautions';
import { plainText } from '../../sim/wording/tables';
import { methodCommand } from './method-command';

export const aim = methodCommand<BestAim, undefined>({
  command: 'aim',
  kinds: {},
  wish: () => undefined,
  note: CAUTIONS_COMMAND_LINE,
  tasks: () => 1,
  ask: (runner, _project, method, options) => runner.do({ kind: 'aim', method, options }),
  json: (best) => best,
  texts: (best, { piece }, method) => [
    aimSentences(best, method, ringGeometry(piece).bevelDeg).join('\n'),
    plainText(aimTable(best)),
  ],
});
