/** `ringtrue aim`: the deliberate offset of the tilt that makes most pieces good. */
import { aimTexts } from '../../sim/wording/aim';
import { CAUTIONS_COMMAND_LINE } from '../../sim/wording/cautions';
import { methodCommand, ringsAsked } from './method-command';

export const aim = methodCommand({
  kind: 'aim',
  command: 'aim',
  options: {},
  asked: ringsAsked,
  note: CAUTIONS_COMMAND_LINE,
  json: (best) => best,
  texts: aimTexts,
});
