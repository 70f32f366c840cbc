/** The units a field understands, each under the one symbol that the expression uses, with its size in mm or degrees. */
import { MM_PER_INCH } from '../../sim/geometry/thresholds';
export type Dimension = 'length' | 'angle';
export type UnitSymbol = 'mm' | 'cm' | 'm' | 'inch' | 'foot' | 'degree' | 'minute' | 'second';

export const UNITS: Readonly<Record<UnitSymbol, { dimension: Dimension; size: number }>> = {
  mm: { dimension: 'length', size: 1 },
  cm: { dimension: 'length', size: 10 },
  m: { dimension: 'length', size: 1000 },
  inch: { dimension: 'length', size: MM_PER_INCH },
  foot: { dimension: 'length', size: 12 * MM_PER_INCH },
  degree: { dimension: 'angle', size: 1 },
  minute: { dimension: 'angle', size: 1 / 60 },
  second: { dimension: 'angle', size: 1 / 3600 },
};

const WORDS: Readonly<Record<string, UnitSymbol>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'inch',
  inch: 'inch',
  inches: 'inch',
  ft: 'foot',
  foot: 'foot',
  feet: 'foot',
  deg: 'degree',
  degree: 'degree',
  degrees: 'degree',
  '°': 'degree',
  min: 'minute',
  minute: 'minute',
  minutes: 'minute',
  sec: 'second',
  second: 'second',
  seconds: 'second',
};

/** The unit a word or mark stands for; ' and " are feet and inches in a length, minutes and seconds in an angle. */
export function unitNamed(word: string, wanted: Dimension | 'none'): UnitSymbol | undefined {
  if (word === "'") return wanted === 'angle' ? 'minute' : 'foot';
  if (word === '"') return wanted === 'angle' ? 'second' : 'inch';
  const key = word.toLowerCase();
  return Object.hasOwn(WORDS, key) ? WORDS[key] : undefined;
}
