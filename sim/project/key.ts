/**
 * What a key of the project file is: its kind, what it is called, what it may hold, what stands for it where a file
 * leaves it out. The tables of keys are made of these, and type, schema, defaults, order of writing, fields, help and
 * what a source of error scales all follow from them.
 */
import type { SourceName } from './source-names';

export interface NumberRange {
  /** Lowest value allowed, itself included unless `open`. */
  from: number;
  to: number;
  /** The lowest value itself is not allowed. */
  open: boolean;
  whole: boolean;
}

export const from = (low: number, to: number): NumberRange => ({ from: low, to, open: false, whole: false });
export const above = (low: number, to: number): NumberRange => ({ from: low, to, open: true, whole: false });
export const whole = (low: number, to: number): NumberRange => ({ from: low, to, open: false, whole: true });

export interface NumberWords {
  label: string;
  /** Left out for plain numbers and shares. */
  unit?: string;
  range: NumberRange;
  /** What to give, as it follows "Give". */
  wanted: string;
  /** One or two sentences on what it stands for, where its name alone may not say it. */
  help?: string;
  /** The source of error whose size it tells. */
  source?: SourceName;
  /** A source that another figure tells of and that this one belongs to as well. */
  alsoOf?: SourceName;
}

/** An `optional` key may be absent from a document; every other is there, by its default if by nothing else. */
export type Presence = 'present' | 'optional';

/** `Value` is what a document holds at the key. */
interface KeyOf<Value, P extends Presence> {
  presence: P;
  /** Left out: a file must give it, unless it is optional. */
  default?: Value;
}

export interface NumberKeyOf<Value, P extends Presence> extends NumberWords, KeyOf<Value, P> {
  kind: 'number';
  unit: string;
  isNullable: boolean;
}

export interface ChoiceKey<Value, P extends Presence> extends KeyOf<Value, P> {
  kind: 'choice';
  label: string;
  options: readonly [string, ...string[]];
}

export interface TextKey<P extends Presence> extends KeyOf<string, P> {
  kind: 'text';
  label: string;
  advice: string;
  /** Most characters. */
  most?: number;
}

/** Whether something is shown. */
export interface ShownKey extends KeyOf<boolean, 'optional'> {
  kind: 'shown';
  label: string;
}

/** The one value that a key may have. */
export interface FixedKey<Value extends string | number> extends KeyOf<Value, 'present'> {
  kind: 'fixed';
  label: string;
  value: Value;
}

export interface SectionKey<Keys extends KeyTable, P extends Presence> extends KeyOf<DocumentOf<Keys>, P> {
  kind: 'section';
  /** What its sentences call it: "the …". */
  label: string;
  keys: Keys;
}

export interface ListKey<Keys extends KeyTable> extends KeyOf<DocumentOf<Keys>[], 'present'> {
  kind: 'list';
  label: string;
  wanted: string;
  of: SectionKey<Keys, 'present'>;
}

/** Keys in the order in which files hold them. */
export type KeyTable = { readonly [name: string]: AnyKey };

export type AnyKey =
  | NumberKeyOf<number | null, Presence>
  | ChoiceKey<string, Presence>
  | TextKey<Presence>
  | ShownKey
  | FixedKey<string | number>
  | SectionKey<KeyTable, Presence>
  | ListKey<KeyTable>;

type ValueOf<Key> =
  Key extends SectionKey<infer Keys, Presence>
    ? DocumentOf<Keys>
    : Key extends ListKey<infer Keys>
      ? DocumentOf<Keys>[]
      : Key extends KeyOf<infer Value, Presence>
        ? Value
        : never;

type OptionalIn<Keys> = { [K in keyof Keys]: Keys[K] extends { presence: 'optional' } ? K : never }[keyof Keys];

type Flat<T> = { [K in keyof T]: T[K] };

/** The part of the document that a table of keys describes. */
export type DocumentOf<Keys> = Flat<
  { -readonly [K in Exclude<keyof Keys, OptionalIn<Keys>>]: ValueOf<Keys[K]> } & {
    -readonly [K in OptionalIn<Keys>]?: ValueOf<Keys[K]>;
  }
>;

export function number(words: NumberWords & { default?: number }): NumberKeyOf<number, 'present'> {
  return { unit: '', ...words, kind: 'number', presence: 'present', isNullable: false };
}

export function optionalNumber(words: NumberWords): NumberKeyOf<number, 'optional'> {
  return { unit: '', ...words, kind: 'number', presence: 'optional', isNullable: false };
}

/** A number that the program works out, or does without, where it is null. */
export function nullableNumber(words: NumberWords & { default: null }): NumberKeyOf<number | null, 'present'> {
  return { unit: '', ...words, kind: 'number', presence: 'present', isNullable: true };
}

export function choice<const Options extends readonly [string, ...string[]]>(words: {
  label: string;
  options: Options;
  default?: NoInfer<Options[number]>;
}): ChoiceKey<Options[number], 'present'> {
  return { ...words, kind: 'choice', presence: 'present' };
}

export function text(words: { label: string; advice: string; default?: string }): TextKey<'present'> {
  return { ...words, kind: 'text', presence: 'present' };
}

export function optionalText(words: { label: string; advice: string }): TextKey<'optional'> {
  return { ...words, kind: 'text', presence: 'optional' };
}

export function shortText(label: string, most: number): TextKey<'optional'> {
  return { kind: 'text', presence: 'optional', label, most, advice: `Give text of up to ${most} characters.` };
}

export function shown(label: string): ShownKey {
  return { kind: 'shown', presence: 'optional', label };
}

export function fixed<const Value extends string | number>(label: string, value: Value): FixedKey<Value> {
  return { kind: 'fixed', presence: 'present', label, value };
}

/** A group of keys; a file may leave it out whole where each of its keys has a default. */
export function section<Keys extends KeyTable>(label: string, keys: Keys): SectionKey<Keys, 'present'> {
  return { kind: 'section', presence: 'present', label, keys };
}

export function optionalSection<Keys extends KeyTable>(label: string, keys: Keys): SectionKey<Keys, 'optional'> {
  return { kind: 'section', presence: 'optional', label, keys };
}

/** At least one of a section each. */
export function listOf<Keys extends KeyTable>(
  label: string,
  wanted: string,
  of: SectionKey<Keys, 'present'>,
): ListKey<Keys> {
  return { kind: 'list', presence: 'present', label, wanted, of };
}

/** The document's part with every default; keys without one are left out. */
export function defaultsOf<Keys extends KeyTable>({ keys }: SectionKey<Keys, Presence>): DocumentOf<Keys> {
  const given = Object.entries(keys).flatMap(([name, key]): [string, unknown][] => {
    if (key.kind === 'section') return key.presence === 'present' ? [[name, defaultsOf(key)]] : [];
    return key.default === undefined ? [] : [[name, key.default]];
  });
  return Object.fromEntries(given) as DocumentOf<Keys>;
}
