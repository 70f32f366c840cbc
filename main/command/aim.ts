/** `ringtrue aim`: the deliberate offset of the tilt that makes most pieces good. */
import { aimTexts } from '../../sim/wording/aim';
import { methodCommand, ringsAsked } from './method-command';

export const aim = methodCommand({
  kind: 'aim',
  command: 'aim',
  options: {},
  asked: ringsAsked,
  json: (best) => best,
  texts: aimTexts,
});
