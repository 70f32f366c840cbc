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

/** What a key is called, and what a page says of it. */
interface Words {
  /** As sentences and tables call it. */
  label: string;
  /** As its field on a page asks for it, where that is not the label. */
  onPage?: string;
  /** One or two sentences on what it stands for, where its name alone may not say it. */
  help?: string;
}

export interface NumberWords extends Words {
  /** Left out for plain numbers and shares. */
  unit?: string;
  range: NumberRange;
  /** What to give, as it follows "Give". */
  wanted: string;
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
  /** What an empty field stands for; a number that may not be left empty has none. */
  whenEmpty?: string;
}

/** One of the words a choice may have: what a page calls it, with a few quiet words under that where one name is not enough. */
export type OptionWords = string | { label: string; note: string };

export interface ChoiceKey<Value, P extends Presence> extends Words, KeyOf<Value, P> {
  kind: 'choice';
  /** In the order in which they are offered. */
  options: Readonly<Record<string, OptionWords>>;
}

export interface TextKey<P extends Presence> extends Words, KeyOf<string, P> {
  kind: 'text';
  advice: string;
  /** Most characters. */
  most?: number;
}

/** Whether something is shown. */
export interface ShownKey extends Words, KeyOf<boolean, 'optional'> {
  kind: 'shown';
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

export function optionalNumber(words: NumberWords & { whenEmpty: string }): NumberKeyOf<number, 'optional'> {
  return { unit: '', ...words, kind: 'number', presence: 'optional', isNullable: false };
}

/** A number that the program works out, or does without, where it is null. */
export function nullableNumber(
  words: NumberWords & { default: null; whenEmpty: string },
): NumberKeyOf<number | null, 'present'> {
  return { unit: '', ...words, kind: 'number', presence: 'present', isNullable: true };
}

export function choice<Options extends Readonly<Record<string, OptionWords>>>(
  words: Words & { options: Options; default?: NoInfer<keyof Options & string> },
): ChoiceKey<keyof Options & string, 'present'> {
  return { ...words, kind: 'choice', presence: 'present' };
}

export function text(words: Words & { advice: string; default?: string }): TextKey<'present'> {
  return { ...words, kind: 'text', presence: 'present' };
}

export function optionalText(words: Words & { advice: string }): TextKey<'optional'> {
  return { ...words, kind: 'text', presence: 'optional' };
}

export function shortText(words: Words & { most: number }): TextKey<'optional'> {
  return { ...words, kind: 'text', presence: 'optional', advice: `Give text of up to ${words.most} characters.` };
}

export function shown(words: Words): ShownKey {
  return { ...words, kind: 'shown', presence: 'optional' };
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
