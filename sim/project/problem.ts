/** Sentences for a value that cannot be used: what it is, the value seen, the value allowed, what to do. */
import { MM_PER_INCH } from '../geometry/thresholds';
import type { NumberRange, NumberWords } from './key';

type Display = 'metric' | 'inch';

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

/** A length in the unit on the page, as it was typed: "280 mm", "11.023622 in". */
export function typedLength(mm: number, display: Display): string {
  return display === 'inch' ? `${Number((mm / MM_PER_INCH).toPrecision(8))} in` : `${mm} mm`;
}

const ROUND = { up: Math.ceil, down: Math.floor, near: Math.round } as const;
/** Below it a difference is dust of binary fractions. */
const DUST = 1e-6;

/** A length worked out, to 0.01 mm or 0.001 in; `up` for what is needed, `down` for what is allowed, so that it will do. */
export function reckonedLength(mm: number, display: Display, way: keyof typeof ROUND = 'near'): string {
  const steps = display === 'inch' ? (mm / MM_PER_INCH) * 1000 : mm * 100;
  const dust = { up: -DUST, down: DUST, near: 0 }[way];
  return display === 'inch' ? `${ROUND[way](steps + dust) / 1000} in` : `${ROUND[way](steps + dust) / 100} mm`;
}

/** "above 0 and up to 200 mm", "a whole number from 3 to 60". */
export function rangeText(range: NumberRange, unit: string): string {
  const span = range.open
    ? `above ${range.from} and up to ${withUnit(range.to, unit)}`
    : `from ${range.from} to ${withUnit(range.to, unit)}`;
  return range.whole ? `a whole number ${span}` : span;
}

function complaint({ from, to, open }: NumberRange, value: number): string {
  if (open && value <= from) return `is not above ${from}`;
  if (value < from) return `is below ${from}`;
  if (value > to) return `is above ${to}`;
  return 'is not a whole number';
}

/** The range in inches, never wider than it is in mm. */
function inInches({ from, to, open, whole }: NumberRange): NumberRange {
  const steps = (mm: number): number => (mm / MM_PER_INCH) * 1e4;
  return { from: Math.ceil(steps(from)) / 1e4, to: Math.floor(steps(to)) / 1e4, open, whole };
}

/**
 * Why `value` cannot be that number; for a value of any kind, `undefined` meaning that the key is not there.
 *
 * @param display the unit on the page; a file has its lengths in mm, whatever it displays
 */
export function numberSentence(field: NumberWords, value: unknown, display: Display = 'metric'): string {
  const isInch = display === 'inch' && field.unit === 'mm';
  const range = isInch ? inInches(field.range) : field.range;
  const unit = isInch ? 'in' : (field.unit ?? '');
  const advice = `Give ${field.wanted}, ${rangeText(range, unit)}.`;
  if (value === undefined) return `${field.label} is missing. ${advice}`;
  if (typeof value !== 'number' || Number.isNaN(value))
    return `${field.label} is ${valueText(value)}, not a number. ${advice}`;
  const seen = isInch ? typedLength(value, display) : withUnit(String(value), unit);
  return `${field.label} ${seen} ${complaint(range, isInch ? value / MM_PER_INCH : value)}. ${advice}`;
}

/** Why `value` is not one of the words that `label` takes. */
export function choiceSentence(label: string, options: readonly string[], value: unknown): string {
  const allowed = options.length === 1 ? `"${options[0]}"` : `one of ${options.join(', ')}`;
  if (value === undefined) return `${label} is missing. Give ${allowed}.`;
  return `${label} is ${valueText(value)}. Give ${allowed}.`;
}
