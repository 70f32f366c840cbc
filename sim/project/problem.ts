/** Sentences for a value that cannot be used: what it is, the value seen, the value allowed, what to do. */
import type { NumberRange, NumberWords } from './key';

export interface Problem {
  /** Key path in the file, e.g. `methods[0].blade.kerfMm`; '' for the file as a whole. */
  path: string;
  /** In the user's words, fit to be shown beside the field. */
  sentence: string;
}

/** One line for a terminal or a log: key path first. */
export function problemLine(problem: Problem): string {
  return problem.path === '' ? problem.sentence : `${problem.path}: ${problem.sentence}`;
}

/** Key path of a list of keys and places, e.g. ['methods', 0, 'name'] → `methods[0].name`. */
export function pathText(keys: readonly PropertyKey[]): string {
  let text = '';
  for (const key of keys) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += text === '' ? safeText(String(key)) : `.${safeText(String(key))}`;
  }
  return text;
}

const LONGEST_SHOWN = 40;
// Control characters, line separators and direction marks: a file's text must not steer the terminal it is printed on.
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** A file's own text made fit for a terminal line: unprintable characters become their code, long text is cut. */
export function safeText(text: string, longest = LONGEST_SHOWN): string {
  const cut = text.length > longest ? `${text.slice(0, longest)}…` : text;
  return cut.replace(UNPRINTABLE, (c) => `\\u${(c.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`);
}

/** A value as the sentence shows it. */
export function valueText(value: unknown): string {
  if (typeof value === 'string') return `"${safeText(value)}"`;
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'a group of keys';
  return String(value);
}

/** "12 mm", "5°", "3". */
export function withUnit(value: number | string, unit: string): string {
  if (unit === '') return `${value}`;
  return unit === '°' ? `${value}°` : `${value} ${unit}`;
}

/** "above 0 and up to 200 mm", "a whole number from 3 to 60". */
export function rangeText(range: NumberRange, unit: string): string {
  const span = range.open
    ? `above ${range.from} and up to ${withUnit(range.to, unit)}`
    : `from ${range.from} to ${withUnit(range.to, unit)}`;
  return range.whole ? `a whole number ${span}` : span;
}

function complaint(field: NumberWords, value: number): string {
  const { range } = field;
  if (range.open && value <= range.from) return `is not above ${range.from}`;
  if (value < range.from) return `is below ${range.from}`;
  if (value > range.to) return `is above ${range.to}`;
  return 'is not a whole number';
}

/** Why `value` cannot be that number; for a value of any kind, `undefined` meaning that the key is not there. */
export function numberSentence(field: NumberWords, value: unknown): string {
  const unit = field.unit ?? '';
  const advice = `Give ${field.wanted}, ${rangeText(field.range, unit)}.`;
  if (value === undefined) return `${field.label} is missing. ${advice}`;
  if (typeof value !== 'number' || Number.isNaN(value))
    return `${field.label} is ${valueText(value)}, not a number. ${advice}`;
  return `${field.label} ${withUnit(String(value), unit)} ${complaint(field, value)}. ${advice}`;
}

/** Why `value` is not one of the words that `label` takes. */
export function choiceSentence(label: string, options: readonly string[], value: unknown): string {
  const allowed = options.length === 1 ? `"${options[0]}"` : `one of ${options.join(', ')}`;
  if (value === undefined) return `${label} is missing. Give ${allowed}.`;
  return `${label} is ${valueText(value)}. Give ${allowed}.`;
}
