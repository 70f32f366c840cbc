/** Reading a command's own part of the command line. */
import { parseArgs } from 'node:util';
import { NUMBER_FIELDS, type NumberRange, withinRange } from '../../sim/project/fields';
import { rangeText, safeText } from '../../sim/project/problem';
import { Refusal } from './refusal';

/** Name of an option, without dashes, to whether a value follows it. */
export type OptionKinds = Readonly<Record<string, 'flag' | 'value'>>;

export interface Arguments {
  /** The last value given for each option that takes one. */
  values: ReadonlyMap<string, string>;
  /** Flags in the order they were given. */
  flags: readonly string[];
  operands: readonly string[];
}

/**
 * @param command its name, for the sentences
 * @param most how many operands the command takes
 * @throws {Refusal} with a line for every option that is unknown, lacks its value or has one too many
 */
export function readArguments(command: string, args: readonly string[], kinds: OptionKinds, most: number): Arguments {
  const options = Object.fromEntries(
    Object.entries(kinds).map(([name, kind]) => [name, { type: kind === 'flag' ? 'boolean' : 'string' } as const]),
  );
  const { tokens } = parseArgs({ args: [...args], options, strict: false, allowPositionals: true, tokens: true });
  const help = `"ringtrue ${command} --help" lists the options.`;
  const values = new Map<string, string>();
  const flags: string[] = [];
  const operands: string[] = [];
  const wrong: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value);
    if (token.kind !== 'option') continue;
    const { name, value } = token;
    const shown = safeText(token.rawName);
    const kind = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
    if (kind === undefined) wrong.push(`Option ${shown} is not known to ${command}. ${help}`);
    else if (kind === 'flag' && value !== undefined) wrong.push(`Option ${shown} takes no value. Leave out "=…".`);
    else if (kind === 'value' && value === undefined) wrong.push(`Option ${shown} has no value. ${help}`);
    else if (value === undefined) flags.push(name);
    else values.set(name, value);
  }
  // What follows an unknown option may have been meant as its value.
  const extras = wrong.length > 0 ? [] : operands.slice(most);
  for (const extra of extras) wrong.push(`"${safeText(extra)}" is one name too many. ${help}`);
  if (wrong.length > 0) throw new Refusal(wrong);
  return { values, flags, operands };
}

/** The whole number given for an option; undefined when it was not given. */
export function wholeNumber(given: Arguments, name: string, range: NumberRange): number | undefined {
  const text = given.values.get(name);
  if (text === undefined) return undefined;
  const value = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (withinRange(range, value)) return value;
  throw new Refusal([`Option --${name} is "${safeText(text)}". Give ${rangeText(range, '')}.`]);
}

/** The number given for an option, in `unit`; undefined when it was not given. */
export function decimalNumber(given: Arguments, name: string, range: NumberRange, unit = ''): number | undefined {
  const text = given.values.get(name);
  if (text === undefined) return undefined;
  const value = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
  if (withinRange(range, value)) return value;
  throw new Refusal([`Option --${name} is "${safeText(text)}". Give a number ${rangeText(range, unit)}.`]);
}

/** The word given for an option, one of `allowed`; undefined when it was not given. */
export function oneOf<const Word extends string>(
  given: Arguments,
  name: string,
  allowed: readonly Word[],
): Word | undefined {
  const text = given.values.get(name);
  if (text === undefined) return undefined;
  const known = allowed.find((word) => word === text);
  if (known !== undefined) return known;
  throw new Refusal([`Option --${name} is "${safeText(text)}". Give one of ${allowed.join(', ')}.`]);
}

export const TRIALS_RANGE = NUMBER_FIELDS['run.trials'].range;
export const SEED_RANGE = NUMBER_FIELDS['run.seed'].range;
