/** What the lead of one method over another hinges on, in sentences. */
import { type LeadHinges, MOST_WORSE } from '../decide/hinges';
import { figureText, figureWords } from './accuracy';
import type { Display } from './figures';
import { countText } from './figures';

/**
 * "“Fixed stop” stays ahead of “Marked line” as long as its shared tilt error stays under 0.21° (now 0.1°), the rest as
 * it is."
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
    return { figure: figureWords(key), at: figureText(key, lostAt, display), now: figureText(key, now, display, 4) };
  });
  const [first] = lost;
  if (first !== undefined && lost.length === 1) {
    const { figure, at, now } = first;
    return `${own} stays ahead of ${other} as long as its ${figure} stays under ${at} (now ${now}), the rest as it is.`;
  }
  const list = lost.map(({ figure, at, now }) => `${figure} ${at} (now ${now})`).join('; ');
  return `${own} stays ahead of ${other} as long as each of these, the rest as it is, stays under the figure beside it: ${list}.`;
}
