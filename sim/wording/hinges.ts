/** What the lead of one method over another hinges on, in sentences. */
import { type LeadHinges, MOST_WORSE } from '../decide/hinges';
import { figureText, figureWords } from './accuracy';
import type { Display } from './figures';
import { countText } from './figures';

/**
 * "“Fixed stop” stays ahead of “Marked line” as long as each of these by itself stays under what follows it: shared tilt
 * error 0.21° (now 0.1°)."
 */
export function hingeSentence(
  leader: string,
  rival: string,
  { trials, leads, hinges }: LeadHinges,
  display: Display,
): string {
  const [own, other] = [`“${leader}”`, `“${rival}”`];
  if (!leads)
    return `Which of ${own} and ${other} gives more good pieces, ${countText(trials)} rings each cannot tell.`;
  if (hinges.length === 0) {
    return `${own} stays ahead of ${other} even with any one of its errors ${MOST_WORSE} times as large.`;
  }
  const lost = hinges.map(({ key, now, lostAt }) => {
    const nowText = figureText(key, now, display, 4);
    return `${figureWords(key)} ${figureText(key, lostAt, display)} (now ${nowText})`;
  });
  const each = lost.length === 1 ? 'this, the rest as it is,' : 'each of these, the rest as it is,';
  return `${own} stays ahead of ${other} as long as ${each} stays under the figure beside it: ${lost.join('; ')}.`;
}
