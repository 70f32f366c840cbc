/** `ringtrue aim`: the deliberate offset of the tilt that makes most pieces good. */
import type { BestAim } from '../../sim/decide/aim';
import { aimTexts } from '../../sim/wording/aim';
import { methodCommand } from './method-command';

export const aim = methodCommand<BestAim, undefined>({
  command: 'aim',
  kinds: {},
  wish: () => undefined,
  tasks: () => 1,
  ask: (runner, _project, method, options) => runner.do({ kind: 'aim', method, options }),
  json: (best) => best,
  texts: aimTexts,
});
