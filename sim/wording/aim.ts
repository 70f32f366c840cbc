/** The tilt to aim at, in words. */
import type { BestAim } from '../decide/aim';
import { ringGeometry } from '../geometry/ring';
import type { Method, Project } from '../project/document';
import type { Share } from '../statistics/estimates';
import { shareDifferenceText } from './differences';
import { angleText, piecesText, shareWithInterval } from './figures';
import { plainText, type TextTable } from './tables';

/** Finer than any saw is set. */
const DECIMALS = 3;

const offsetText = (deg: number): string => angleText(Math.abs(deg), 'decimal', DECIMALS);

/** "0.05° more than square to the ring asks for". */
function sideText(deg: number): string {
  if (deg === 0) return 'as the ring asks for';
  return `${offsetText(deg)} ${deg > 0 ? 'over' : 'under'} what the ring asks for`;
}

/** One row for no aim and every offset tried that gave a good piece and is not hopeless beside the best. */
export function aimTable({ curve, yield: best }: BestAim): TextTable {
  const isWorth = ({ value, high }: Share): boolean => value > 0 && high >= 0.1 * best.value;
  const worth = curve.filter((point) => isWorth(point.yield) || point.aimDeg === 0);
  return {
    head: ['Tilt aimed', 'Good enough'],
    rows: worth.map(({ aimDeg, yield: good }) => {
      return [aimDeg > 0 ? `+${offsetText(aimDeg)}` : angleText(aimDeg, 'decimal', DECIMALS), shareWithInterval(good)];
    }),
  };
}

/** Fewer good pieces than these, whatever the aim, and there is none to choose. */
const HOPELESS = 0.01;

/** What an aim has to gain to be worth the gaps it opens on the other side. */
const LEAST_GAIN = 0.01;

/** Whether to aim at all: not on flat work, and not for a gain too small or too uncertain. */
export function isAimWorthwhile({ yield: good, gain }: BestAim, bevelDeg: number): boolean {
  return good.value > 0 && bevelDeg !== 0 && gain.low > 0 && gain.value >= LEAST_GAIN;
}

/** @param bevelDeg the tilt that the ring asks for */
export function aimSentences(best: BestAim, { name, tilt }: Method, bevelDeg: number): string[] {
  const said = [`“${name}”: ${answer(best, bevelDeg)}`];
  if (tilt.aimDeg !== 0) said.push(`The file has it aimed ${sideText(tilt.aimDeg)}.`);
  return said;
}

function answer({ aimDeg, alikeDeg, yield: good, gain }: BestAim, bevelDeg: number): string {
  const comes = piecesText(good, 'comes out good', 'come out good');
  if (good.value < HOPELESS) {
    const best = good.value <= 0 ? 'no aim gives a good piece' : `no aim helps, ${comes} at best`;
    return `${best}: make the method better or the limits wider first.`;
  }
  if (bevelDeg === 0) {
    return 'a flat frame is cut with the blade square; a tilt would not close it better, only leave it no longer flat.';
  }
  const nominal = angleText(bevelDeg);
  if (gain.low <= 0) {
    return `leave the tilt at ${nominal}: ${comes}, and no aim does better for certain.`;
  }
  if (gain.value < LEAST_GAIN) {
    return `leave the tilt at ${nominal}; the best aim gains no more than ${shareDifferenceText(gain)}.`;
  }
  const set = angleText(bevelDeg + aimDeg, 'decimal', DECIMALS);
  const [from, to] = [alikeDeg.from, alikeDeg.to].map((deg) => angleText(bevelDeg + deg, 'decimal', DECIMALS));
  const alike = from === to ? '' : `, ${from} to ${to} does as well`;
  return (
    `set the tilt to ${set}, ${sideText(aimDeg)}${alike}: ${comes}, ` + `${shareDifferenceText(gain)} against no aim.`
  );
}

/** The answer for one method; the table only where some aim is worth a look. */
export function aimTexts(best: BestAim, { piece }: Project, method: Method): string[] {
  const said = aimSentences(best, method, ringGeometry(piece).bevelDeg).join('\n');
  return best.yield.value < HOPELESS ? [said] : [said, plainText(aimTable(best))];
}
