/** Figures as words and tables show them: no more digits than their uncertainty allows, and units always said. */
import { MM_PER_INCH, WILL_NOT_CLOSE_MM } from '../geometry/thresholds';
import type { Interval, Share } from '../statistics/estimates';
import { plainNumber } from './plain-number';

export type Display = 'metric' | 'inch';

/** A sentence begins with it. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Gaps that differ by less are the same gap. */
const SAME_MM = 1e-4;

const fixed = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
};

const THOUSANDS = /\B(?=(\d{3})+$)/g;

/** Whole numbers with a comma between thousands, whatever the machine's language. */
export function countText(count: number): string {
  const sign = count <= -0.5 ? '-' : '';
  return `${sign}${fixed(Math.abs(count), 0).replace(THOUSANDS, ',')}`;
}

/**
 * Decimals up to the leading digit of the uncertainty, e.g. 0.004 → 3, 0.03 → 2, 5 → 0; `most` when there is no
 * uncertainty to speak of. Both in the same unit.
 */
export function decimalsFor(uncertainty: number, most: number): number {
  if (!(uncertainty > 0)) return most;
  return Math.min(most, Math.max(0, -Math.floor(Math.log10(uncertainty))));
}

function fractionText(inches: number): string {
  const sixtyFourths = Math.round(Math.abs(inches) * 64);
  const whole = Math.floor(sixtyFourths / 64);
  let top = sixtyFourths % 64;
  let bottom = 64;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const parts = [whole > 0 || top === 0 ? `${whole}` : '', top > 0 ? `${top}/${bottom}` : ''];
  const sign = inches < 0 && sixtyFourths > 0 ? '-' : '';
  return `${sign}${parts.filter((part) => part !== '').join(' ')} in`;
}

export interface LengthWords {
  /** Rounds to it, in mm; left out: 2 decimals of a mm, 3 of an inch. */
  uncertaintyMm?: number;
  /** Inches to the nearest 1/64. */
  fractions?: boolean;
}

/** "280 mm", "11.024 in", "11 1/32 in"; zeros at the end are dropped unless an uncertainty says that they count. */
export function lengthText(mm: number, display: Display, words: LengthWords = {}): string {
  if (display === 'inch' && words.fractions) return fractionText(mm / MM_PER_INCH);
  const [value, unit, usual] = display === 'inch' ? [mm / MM_PER_INCH, 'in', 3] : [mm, 'mm', 2];
  if (words.uncertaintyMm === undefined) return `${Number(fixed(value, usual))} ${unit}`;
  const uncertainty = display === 'inch' ? words.uncertaintyMm / MM_PER_INCH : words.uncertaintyMm;
  return `${fixed(value, decimalsFor(uncertainty, usual + 1))} ${unit}`;
}

/** Of a number in another unit than it was typed in; the least that keeps small figures apart. */
const GIVEN_DIGITS = 4;
/** Inches that were typed as such come back whole from mm. */
const GIVEN_DECIMALS = 6;

/** A limit in a sentence: as it was typed in; one that was typed in mm reads in inches as the gaps beside it do. */
export function limitInSentence(mm: number, display: Display): string {
  const inches = mm / MM_PER_INCH;
  const isTyped = Math.abs(Number(inches.toFixed(GIVEN_DECIMALS)) - inches) < 1e-9;
  return display === 'inch' && !isTyped ? gapText(mm, display) : givenLengthText(mm, display);
}

/** A length as a person would say it: to a millimetre, below 50 mm to a half, below 10 to a tenth; to a sixteenth of an inch. */
export function aboutLengthText(mm: number, display: Display): string {
  if (display === 'inch') return fractionText(Math.round((mm / MM_PER_INCH) * 16) / 16);
  const step = mm < 10 ? 0.1 : mm < 50 ? 0.5 : 1;
  return `${Number((Math.round(mm / step) * step).toFixed(1))} mm`;
}

const COUNT_WORDS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** "three"; figures from thirteen on. */
export function countWord(count: number): string {
  return COUNT_WORDS[count] ?? countText(count);
}

/** "About 83 of 100 rings", "About 99.8 of 100 rings", "Almost all rings", "None of the rings": for those who want one figure. */
export function aboutOfHundredText(share: number, things: string): string {
  if (share <= 0) return `None of the ${things}`;
  if (share < 0.0005) return `Almost none of the ${things}`;
  if (share > 0.9995) return `Almost all ${things}`;
  return `About ${fixed(100 * share, share < 0.02 || share > 0.98 ? 1 : 0)} of 100 ${things}`;
}

/** A number as it was typed in, without an exponent and without what floating point adds to it. */
export function givenText(value: number): string {
  const written = Number(value.toPrecision(12));
  const text = `${written}`;
  return text.includes('e') ? written.toFixed(20).replace(/\.?0+$/, '') : text;
}

/** A length that somebody typed in, never rounder than it is: "0.005 mm", "0.015625 in"; mm in inches to four digits. */
export function givenLengthText(mm: number, display: Display): string {
  if (display === 'metric') return `${givenText(mm)} mm`;
  const inches = mm / MM_PER_INCH;
  const typed = Number(inches.toFixed(GIVEN_DECIMALS));
  const isTyped = Math.abs(typed - inches) < 1e-9;
  return `${givenText(isTyped ? typed : Number(inches.toPrecision(GIVEN_DIGITS)))} in`;
}

/** A gap: in mm to a hundredth or finer, in inches to a thousandth or finer, and never a number where a joint has not closed. */
export function gapText(mm: number, display: Display, uncertaintyMm = 0.03): string {
  if (mm > WILL_NOT_CLOSE_MM) return `over ${lengthText(WILL_NOT_CLOSE_MM, display)}`;
  const inch = display === 'inch';
  const [value, uncertainty, unit] = inch
    ? [mm / MM_PER_INCH, uncertaintyMm / MM_PER_INCH, 'in']
    : [mm, uncertaintyMm, 'mm'];
  const least = inch ? 3 : 2;
  return `${fixed(value, Math.max(least, decimalsFor(uncertainty, least + 1)))} ${unit}`;
}

/** A limit as its field shows it: what was put in is never said rounder than it is. */
export function limitText(mm: number, display: Display): string {
  const [value, unit, least] = display === 'inch' ? [mm / MM_PER_INCH, 'in', 3] : [mm, 'mm', 2];
  const typed = plainNumber(value, least + 1);
  const [, decimals = ''] = typed.split('.');
  // Zeros at the end, so that the figure keeps its width while it is dragged.
  return `${decimals.length < least ? fixed(value, least) : typed} ${unit}`;
}

/** Of two gaps held against each other, the difference shown may be off by this share of the true one. */
const TOLD_APART = 0.15;
const MOST_EXTRA = 2;

/** Two gaps that are held against each other, in the same digits, and as many as tell how far they are apart. */
export function comparedGaps(a: number, b: number, display: Display): [string, string] {
  const unitMm = display === 'inch' ? MM_PER_INCH : 1;
  const least = display === 'inch' ? 3 : 2;
  const apart = Math.abs(a - b) / unitMm;
  const shown = (mm: number, decimals: number): number => Number((mm / unitMm).toFixed(decimals));
  let decimals = least;
  const isTrue = (): boolean =>
    Math.abs(Math.abs(shown(a, decimals) - shown(b, decimals)) - apart) <= TOLD_APART * apart;
  if (apart * unitMm >= SAME_MM) while (decimals < least + MOST_EXTRA && !isTrue()) decimals++;
  const text = (mm: number): string =>
    mm > WILL_NOT_CLOSE_MM
      ? gapText(mm, display)
      : `${fixed(mm / unitMm, decimals)} ${display === 'inch' ? 'in' : 'mm'}`;
  return [text(a), text(b)];
}

/** In decimal degrees, or in degrees and minutes. */
export type AngleStyle = 'decimal' | 'minutes';

/** "22.5°" or "22°30′". */
export function angleText(deg: number, style: AngleStyle = 'decimal', decimals = 2): string {
  if (style === 'decimal') return `${Number(fixed(deg, decimals))}°`;
  const minutes = Math.round(Math.abs(deg) * 60);
  const sign = deg < 0 && minutes > 0 ? '-' : '';
  return `${sign}${Math.floor(minutes / 60)}°${String(minutes % 60).padStart(2, '0')}′`;
}

/** "25 min", "1 h 05 min". */
export function minutesText(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 90) return `${whole} min`;
  return `${countText(Math.floor(whole / 60))} h ${String(whole % 60).padStart(2, '0')} min`;
}

/** "25 min (24 to 26)": with its interval where there is one that shows; "–" for no piece at all. */
export function timeText(minutes: number | null, interval: Interval | null): string {
  if (minutes === null) return '–';
  const [seen, least, most] = [minutes, interval?.low ?? minutes, interval?.high ?? minutes].map(minutesText);
  return least === most ? `${seen}` : `${seen} (${least?.replace(/ min$/, '')} to ${most?.replace(/ min$/, '')})`;
}

/** Money without a currency, which the file does not know; two decimals at most, fewer where the uncertainty is larger. */
export function moneyText(amount: number, uncertainty = 0): string {
  const [whole = '0', part] = fixed(Math.abs(amount), decimalsFor(uncertainty, 2)).split('.');
  const sign = amount < 0 ? '-' : '';
  return `${sign}${whole.replace(THOUSANDS, ',')}${part === undefined ? '' : `.${part}`}`;
}

/** The smallest power of ten, at least 1,000, of which `share` makes one or more. */
function countBase(share: number): number {
  let base = 1000;
  while (share * base < 1 && base < 1e12) base *= 10;
  return base;
}

function rareText({ value, low, high }: Share): string {
  let base = countBase(value);
  // Counted finely enough that the interval does not round away.
  while (Math.round(low * base) === Math.round(high * base) && base < 1e6) base *= 10;
  const [seen, least, most] = [value, low, high].map((share) => countText(share * base));
  return `about ${seen} in ${countText(base)} (${least} to ${most})`;
}

function atMostText(share: number): string {
  const base = countBase(share);
  return `at most ${countText(Math.ceil(share * base))} in ${countText(base)}`;
}

/** Below this, and above one less it, a chance is told in counts: "1 in 50" and rarer means little as a percentage. */
const RARE = 1 / 50;

/**
 * A chance in words: "83 in 100"; rarer than 1 in 50 "about 2 in 1,000 (1 to 9)"; never seen "none (at most 4 in 1,000)".
 * Near certainty the failures are counted the same way: "all but about 2 in 1,000 (1 to 9)".
 */
export function shareText(share: Share): string {
  const { value, low, high } = share;
  if (low <= 0 && high >= 1) return 'not known yet';
  if (value <= 0) return `none (${atMostText(high)})`;
  if (value >= 1) return `all (but for ${atMostText(1 - low)})`;
  if (value < RARE) return rareText(share);
  if (value > 1 - RARE) return `all but ${rareText({ value: 1 - value, low: 1 - high, high: 1 - low })}`;
  return `${fixed(100 * value, 0)} in 100`;
}

/** The same with the interval beside it: "83 in 100 (81 to 85)", to a tenth when the interval is that narrow. */
export function shareWithInterval(share: Share): string {
  const { value, low, high } = share;
  if (value < RARE || value > 1 - RARE || (low <= 0 && high >= 1)) return shareText(share);
  const decimals = high - low < 0.01 ? 1 : 0;
  const [seen, least, most] = [value, low, high].map((part) => fixed(100 * part, decimals));
  return `${seen} in 100 (${least} to ${most})`;
}

/**
 * The same as the start of a sentence about pieces; the verb is given for one piece and for many:
 * "83 in 100 pieces come out good", "no piece comes out good (at most 4 in 1,000)".
 */
export function piecesText(share: Share, one: string, many: string, of = { one: 'piece', many: 'pieces' }): string {
  const { value, low, high } = share;
  if (low <= 0 && high >= 1) return `it is not known yet how many ${of.many} ${many}`;
  if (value <= 0) return `no ${of.one} ${one} (${atMostText(high)})`;
  if (value >= 1) return `every ${of.one} ${one} (but for ${atMostText(1 - low)})`;
  return `${shareText(share)} ${of.many} ${many}`;
}

/** "41 in 100 pieces will not close"; where hardly any closes, those that do: "only about 5 in 1,000 (4 to 7) pieces close". */
export function notClosingText(share: Share, of = { one: 'piece', many: 'pieces' }): string {
  const { value, low, high } = share;
  const isUnknown = low <= 0 && high >= 1;
  if (isUnknown || value <= 1 - RARE) return piecesText(share, 'fails to close', 'will not close', of);
  const closing = piecesText({ value: 1 - value, low: 1 - high, high: 1 - low }, 'closes', 'close', of);
  return value >= 1 ? closing : `only ${closing}`;
}

/** "A", "A and B", "A, B and C". */
export function listText(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
