/** The fields of the project file by their key paths, with `[]` for the place in a list: names, units, ranges, help. */
import type {
  AnyKey,
  ChoiceKey,
  KeyTable,
  ListKey,
  NumberKeyOf,
  NumberRange,
  OptionWords,
  Presence,
  SectionKey,
  ShownKey,
  TextKey,
} from './key';
import { PROJECT } from './keys';

export type { NumberRange } from './key';

export type NumberField = NumberKeyOf<number | null, Presence>;
export type ChoiceFieldKey = ChoiceKey<string, Presence>;
/** What a page can ask for. */
export type FieldKey = NumberField | ChoiceFieldKey | TextKey<Presence> | ShownKey;

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

function fieldsIn(keys: KeyTable, before: string): [string, FieldKey][] {
  return Object.entries(keys).flatMap(([name, key]: [string, AnyKey]): [string, FieldKey][] => {
    if (key.kind === 'section') return fieldsIn(key.keys, `${before}${name}.`);
    if (key.kind === 'list') return fieldsIn(key.of.keys, `${before}${name}[].`);
    return key.kind === 'fixed' ? [] : [[before + name, key]];
  });
}

const FIELDS = new Map(fieldsIn(PROJECT.keys, ''));

export const NUMBER_FIELDS = Object.fromEntries(
  [...FIELDS].filter(([, field]) => field.kind === 'number'),
) as unknown as Readonly<Record<NumberKey, NumberField>>;

/** The field at a key path such as `methods[2].blade.kerfMm`; undefined when none stands there. */
export function keyAt(path: string): FieldKey | undefined {
  return FIELDS.get(path.replace(/\[\d+\]/g, '[]'));
}

/** The number at a key path; undefined when no number stands there. */
export function fieldAt(path: string): NumberField | undefined {
  const key = keyAt(path);
  return key?.kind === 'number' ? key : undefined;
}

/** One or two sentences for the field at a key path; undefined where none is needed. */
export function fieldHelp(path: string): string | undefined {
  return keyAt(path)?.help;
}

/** What a page calls a field. */
export function labelOnPage({ onPage, label }: { onPage?: string; label: string }): string {
  return onPage ?? label;
}

/** What a page calls a word that a choice has; the word itself where the choice does not know it. */
export function optionLabel({ options }: { options: Readonly<Record<string, OptionWords>> }, value: string): string {
  const words = Object.hasOwn(options, value) ? options[value]! : value;
  return typeof words === 'string' ? words : words.label;
}

export function withinRange(range: NumberRange, value: number): boolean {
  if (!Number.isFinite(value) || value > range.to) return false;
  if (range.whole && !Number.isInteger(value)) return false;
  return range.open ? value > range.from : value >= range.from;
}
