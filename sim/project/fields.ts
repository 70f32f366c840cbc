/** The numbers of the project file by their key paths, with `[]` for the place in a list: names, units, ranges, help. */
import type { AnyKey, KeyTable, ListKey, NumberKeyOf, NumberRange, Presence, SectionKey } from './key';
import { PROJECT } from './keys';

export type { NumberRange } from './key';

export type NumberField = NumberKeyOf<number | null, Presence>;

type NumbersIn<Keys, Before extends string> = {
  [K in keyof Keys & string]: Keys[K] extends SectionKey<infer Inner, Presence>
    ? NumbersIn<Inner, `${Before}${K}.`>
    : Keys[K] extends ListKey<infer Inner>
      ? NumbersIn<Inner, `${Before}${K}[].`>
      : Keys[K] extends NumberKeyOf<infer _, Presence>
        ? `${Before}${K}`
        : never;
}[keyof Keys & string];

export type NumberKey = NumbersIn<(typeof PROJECT)['keys'], ''>;

function numbersIn(keys: KeyTable, before: string): [string, NumberField][] {
  return Object.entries(keys).flatMap(([name, key]: [string, AnyKey]): [string, NumberField][] => {
    if (key.kind === 'section') return numbersIn(key.keys, `${before}${name}.`);
    if (key.kind === 'list') return numbersIn(key.of.keys, `${before}${name}[].`);
    return key.kind === 'number' ? [[before + name, key]] : [];
  });
}

export const NUMBER_FIELDS = Object.fromEntries(numbersIn(PROJECT.keys, '')) as Readonly<
  Record<NumberKey, NumberField>
>;

/** The entry for a key path such as `methods[2].blade.kerfMm`; undefined when no number stands there. */
export function fieldAt(path: string): NumberField | undefined {
  const key = path.replace(/\[\d+\]/g, '[]');
  return Object.hasOwn(NUMBER_FIELDS, key) ? NUMBER_FIELDS[key as NumberKey] : undefined;
}

/** One or two sentences for the field at a key path; undefined where none is needed. */
export function fieldHelp(path: string): string | undefined {
  return fieldAt(path)?.help;
}

export function withinRange(range: NumberRange, value: number): boolean {
  if (!Number.isFinite(value) || value > range.to) return false;
  if (range.whole && !Number.isInteger(value)) return false;
  return range.open ? value > range.from : value >= range.from;
}
