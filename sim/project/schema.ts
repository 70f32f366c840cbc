/**
 * The one schema of the project file, made from the tables of keys. It refuses unknown keys and values out of range, and
 * fills every default. What no single value shows (does the insert fit, are the strips long enough) is left to `checks.ts`.
 */
import { z } from 'zod';
import type { Project } from './document';
import { withinRange } from './fields';
import type { AnyKey, ChoiceKey, KeyTable, ListKey, NumberKeyOf, Presence, SectionKey, TextKey } from './key';
import { PROJECT } from './keys';
import { choiceSentence, numberSentence, valueText } from './problem';

// Compiled parsers would need eval, which the pages' content security policy forbids.
z.config({ jitless: true });

function number(key: NumberKeyOf<number | null, Presence>): z.ZodType {
  const wanted = z
    .number({ error: (issue) => numberSentence(key, issue.input) })
    .refine((value) => withinRange(key.range, value), { error: (issue) => numberSentence(key, issue.input) });
  return key.isNullable ? wanted.nullable() : wanted;
}

function text({ label, advice, most }: TextKey<Presence>): z.ZodType {
  const any = z.string({
    error: (issue) =>
      issue.input === undefined
        ? `${label} is missing. ${advice}`
        : `${label} is ${valueText(issue.input)}, not text. ${advice}`,
  });
  if (most === undefined) return any;
  return any.max(most, { error: (issue) => `${label} has ${String(issue.input).length} characters. ${advice}` });
}

function choice({ label, options }: ChoiceKey<string, Presence>): z.ZodType {
  const words = Object.keys(options);
  return z.enum(words, { error: (issue) => choiceSentence(label, words, issue.input) });
}

/** Refuses every key that is not in its table. */
function section({ label, keys }: SectionKey<KeyTable, Presence>): z.ZodType {
  const known = Object.keys(keys).join(', ');
  const start = `T${label.slice(1)}`;
  const shape = Object.fromEntries(Object.entries(keys).map(([name, key]) => [name, present(key)]));
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') return `is not a key of ${label}. Take it out, or use one of ${known}.`;
      if (issue.input === undefined) return `${start} is missing. Give a group with the keys ${known}.`;
      return `${start} is ${valueText(issue.input)}, not a group of keys. Give a group with the keys ${known}.`;
    },
  });
}

function list({ label, wanted, of }: ListKey<KeyTable>): z.ZodType {
  return z
    .array(section(of), {
      error: (issue) =>
        issue.input === undefined
          ? `${label} are missing. ${wanted}`
          : `${label} is ${valueText(issue.input)}, not a list. ${wanted}`,
    })
    .min(1, { error: `${label} is an empty list. ${wanted}` });
}

function schemaOf(key: AnyKey): z.ZodType {
  switch (key.kind) {
    case 'number':
      return number(key);
    case 'choice':
      return choice(key);
    case 'text':
      return text(key);
    case 'shown':
      return z.boolean({
        error: (issue) => `${key.label} is ${valueText(issue.input)}. Give true to show it or false to leave it out.`,
      });
    case 'fixed':
      return z.literal(key.value, { error: (issue) => choiceSentence(key.label, [`${key.value}`], issue.input) });
    case 'section':
      return section(key);
    case 'list':
      return list(key);
  }
}

/** Whether a file must give something of it. */
function isRequired(key: AnyKey): boolean {
  if (key.presence === 'optional') return false;
  return key.kind === 'section' ? Object.values(key.keys).some(isRequired) : key.default === undefined;
}

/** The schema of a key with what stands for it where a file leaves it out. */
function present(key: AnyKey): z.ZodType {
  const schema = schemaOf(key);
  if (key.presence === 'optional') return z.exactOptional(schema);
  if (isRequired(key)) return schema;
  return key.kind === 'section' ? schema.prefault({}) : schema.default(key.default);
}

/** Input: the parsed JSON of a file of this version. Output: the document with every default filled in. */
export const projectSchema = section(PROJECT) as z.ZodType<Project>;
