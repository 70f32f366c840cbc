/** The strips, the order of the cuts and the chance of a stave too few, in words. */
import type { Method, Stock } from '../project/document';
import type { StaveCount, StockSpread } from '../stock/short';
import type { Strip, StripCut } from '../stock/strips';
import { countText, type Display, lengthText } from './figures';
import type { TextTable } from './tables';

/** To a tenth of a mm, or to 1/64 of an inch where fractions are wanted: finer than a strip is measured. */
const lengthAlong = (mm: number, display: Display, fractions: boolean): string =>
  lengthText(mm, display, { uncertaintyMm: 0.1, fractions });

/** One row a strip. Staves are counted from 1. */
export function stripTable(strips: readonly Strip[], display: Display, fractions = false): TextTable {
  const length = (mm: number) => lengthAlong(mm, display, fractions);
  return {
    head: ['Strip', 'Staves', 'Needed', 'Length', 'To spare'],
    rows: strips.map(({ firstStave, staves, lengthMm, neededMm }, strip) => [
      `${strip + 1}`,
      staves === 1 ? `${firstStave + 1}` : `${firstStave + 1} to ${firstStave + staves}`,
      length(neededMm),
      length(lengthMm),
      length(lengthMm - neededMm),
    ]),
  };
}

function facesText({ right, left }: StripCut): string {
  const faces = [
    ...(right === undefined ? [] : [`right face of stave ${right + 1}`]),
    ...(left === undefined ? [] : [`left face of stave ${left + 1}`]),
  ];
  return faces.join(', ');
}

/** One row a cut, in the order of the work. */
export function cutTable(
  strips: readonly Strip[],
  sequence: Method['sequence'],
  display: Display,
  fractions = false,
): TextTable {
  const length = (mm: number) => lengthAlong(mm, display, fractions);
  const turned = sequence === 'flipFace' ? 'face turned over' : 'end for end';
  return {
    head: ['Strip', 'Cut', 'Makes', 'Strip lies', 'Kerf from', 'to', 'Left after it'],
    rows: strips.flatMap(({ cuts }, strip) =>
      cuts.map((cut) => [
        `${strip + 1}`,
        `${cut.order + 1}`,
        facesText(cut),
        cut.turned ? turned : 'as begun',
        length(cut.kerfFromMm),
        length(cut.kerfToMm),
        length(cut.leftMm),
      ]),
    ),
  };
}

/** What one stave takes, and the chance of coming up short. */
export function stockSentences(
  name: string,
  pitchMm: number,
  count: StaveCount | undefined,
  spread: StockSpread,
  stock: Stock,
  display: Display,
  fractions = false,
): string[] {
  const length = (mm: number) => lengthText(mm, display);
  const said = [`“${name}”: one stave uses up ${lengthText(pitchMm, display, { fractions })} of strip.`];
  if (count === undefined) {
    said.push('The file gives no strip length, so the strips are taken just long enough and none comes up short.');
    return said;
  }
  const strips = stock.stripCount === 1 ? 'The strip comes' : `The ${countText(stock.stripCount)} strips come`;
  said.push(
    `${strips} up short of a stave with a chance of ${chanceText(count.chanceShort)}, ` +
      `for strip lengths off by ${length(spread.lengthSigmaMm)} and a kerf off by ${length(spread.kerfSharedSigmaMm)} ` +
      '(standard deviations).',
  );
  return said;
}

/** "under 1 in 1,000,000", "3 in 1,000", "42 in 100": an exact chance needs no interval. */
export function chanceText(chance: number): string {
  if (chance < 1e-6) return 'under 1 in 1,000,000';
  if (chance > 0.999) return 'over 999 in 1,000';
  let base = 100;
  while (chance * base < 1) base *= 10;
  return `${countText(chance * base)} in ${countText(base)}`;
}
