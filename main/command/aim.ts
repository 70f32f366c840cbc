/** `ringtrue aim`: the deliberate offset of the tilt that makes most pieces good. */
import { ringGeometry } from '../../sim/geometry/ring';
import { aimSentences, aimTable } from '../../sim/wording/aim';
import { plainText } from '../../sim/wording/tables';
import { methodCommand, ringsAsked } from './method-command';

export const aim = methodCommand({
  kind: 'aim',
  command: 'aim',
  options: {},
  asked: ringsAsked,
  json: (best) => best,
  texts: (best, { piece }, method) => [
    aimSentences(best, method, ringGeometry(piece).bevelDeg).join('\n'),
    plainText(aimTable(best)),
  ],
});
