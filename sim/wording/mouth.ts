/** The mouth at dry fit in words: every joint but the last pulled tight, how far the last one stands open. */
import type { MouthAgainstGap } from '../decide/mouth-against-gap';
import type { AssemblyBy } from '../project/document';
import type { Share, SpreadSummary } from '../statistics/estimates';
import { type Display, lengthText, limitText, shareText } from './figures';
import type { TextTable } from './tables';

/** A mouth is read with a rule. */
const MOUTH_READING_MM = 0.3;
const CLOSED_MM = 0.05;

/** "2.1 mm", the sign left to the words around it. */
export function mouthSizeText(mm: number, display: Display): string {
  return lengthText(Math.abs(mm), display, { uncertaintyMm: MOUTH_READING_MM });
}

/** "an opening of 2.1 mm", "an overlap of 2.1 mm". */
function mouthText(mm: number, display: Display): string {
  if (Math.abs(mm) < CLOSED_MM) return 'just closed';
  return `${mm > 0 ? 'an opening' : 'an overlap'} of ${mouthSizeText(mm, display)}`;
}

function stands(mm: number, display: Display): string {
  if (Math.abs(mm) < CLOSED_MM) return 'just closes';
  return `${mm > 0 ? 'stands open' : 'overlaps'} by ${mouthSizeText(mm, display)}`;
}

/** Where the mouth lies in all rings. */
export function mouthSentence({ p05, p50, p95 }: SpreadSummary, display: Display): string {
  return (
    `With all joints but the last pulled tight, the last ${stands(p50, display)} in the middle ring; ` +
    `90 of 100 rings lie between ${mouthText(p05, display)} and ${mouthText(p95, display)}.`
  );
}

/** What the mouth means for the joints. */
export function mouthMeaning(by: AssemblyBy, sides: number, freeJoints: number): string {
  const gathers = `The mouth gathers the errors of all ${2 * sides} faces in one place, so it is many times any gap that is left.`;
  switch (by) {
    case 'allAtOnce':
      return `${gathers} Pulled up, all ${sides} joints give a little and share it.`;
    case 'oneByOne':
      return `${gathers} Pulled up, only the last ${freeJoints} joints are left to share it.`;
    case 'twoHalves':
      return `${gathers} In two halves it never shows: truing the end faces takes it away.`;
  }
}

/** Whether a look at the mouth tells how the ring will look. */
export function mouthAgainstGapSentence(found: MouthAgainstGap, limitMm: number, display: Display): string {
  const { lowerMm, upperMm, lowest, middle, highest } = found;
  const beyond = (mm: number, isUpper: boolean): string => {
    if (mm > 0)
      return isUpper
        ? `open by more than ${mouthSizeText(mm, display)}`
        : `open by less than ${mouthSizeText(mm, display)}`;
    return isUpper
      ? `overlapping by less than ${mouthSizeText(mm, display)}`
      : `overlapping by more than ${mouthSizeText(mm, display)}`;
  };
  return (
    `A gap over ${limitText(limitMm, display)} is left in ${shareText(highest)} of the rings whose mouth is ${beyond(upperMm, true)}, ` +
    `in ${shareText(lowest)} of those ${beyond(lowerMm, false)}, and in ${shareText(middle)} of the half between.`
  );
}

const signed = (mm: number, display: Display): string => {
  const text = mouthSizeText(mm, display);
  return mm < 0 && !/^0(\.0+)? /.test(text) ? `-${text}` : text;
};

/** The spread as a table. */
export function mouthTable({ mean, sd, p05, p50, p95 }: SpreadSummary, display: Display): TextTable {
  return {
    head: ['Mouth at dry fit', 'Open; overlap below 0'],
    rows: [
      ['5 of 100 rings below', signed(p05, display)],
      ['Half of the rings below', signed(p50, display)],
      ['95 of 100 rings below', signed(p95, display)],
      ['Mean', signed(mean, display)],
      ['Standard deviation', signed(sd, display)],
    ],
  };
}

/** How often the gap is over the limit, by the size of the mouth. */
export function mouthAgainstGapTable(found: MouthAgainstGap, limitMm: number, display: Display): TextTable {
  const [lower, upper] = [signed(found.lowerMm, display), signed(found.upperMm, display)];
  const row = (name: string, share: Share): string[] => [name, shareText(share)];
  return {
    head: ['Mouth (overlap below 0)', `Gap over ${limitText(limitMm, display)}`],
    rows: [
      row(`below ${lower}: the lowest quarter`, found.lowest),
      row(`${lower} to ${upper}: the half between`, found.middle),
      row(`above ${upper}: the highest quarter`, found.highest),
    ],
  };
}
