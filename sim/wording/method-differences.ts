/** What two methods do not do alike, part by part, in words. */
import { MM_PER_INCH } from '../geometry/thresholds';
import { SEQUENCE_WORDS } from '../project/choice-words';
import type { Method } from '../project/document';
import { fieldAt } from '../project/fields';
import type { MethodPart } from '../project/preset';
import { nearestPreset, presetOf } from '../project/presets';
import { type Display, listText } from './figures';

export const WIDE_FACE_WORDS: Readonly<Record<Method['wideFace'], string>> = { down: 'Down', up: 'Up' };

/** Everything a method is put together from; the name is no part of it. */
export type ComparedPart = MethodPart | 'sequence' | 'wideFace' | 'minutes';

/** In the order of the work; each as it follows "differs in". */
const PART_WORDS: Readonly<Record<ComparedPart, string>> = {
  tilt: 'how the tilt is set',
  guide: 'what carries the work',
  width: 'what fixes the stave width',
  blade: 'the blade',
  sequence: 'the cut sequence',
  wideFace: 'where the wide face lies at the cut',
  assembly: 'how the ring is put together',
  test: 'the test cuts',
  minutes: 'the minutes it takes',
};

export interface PartDifference {
  part: ComparedPart;
  /** What the method and the one it is held against chose; null where no choice has a name or both chose alike. */
  chosen: { own: string; other: string } | null;
  /** Keys of the part whose figures are not alike; none for a plain choice. */
  keys: readonly string[];
}

function partChoice(method: Method, part: ComparedPart): string | null {
  if (part === 'sequence') return SEQUENCE_WORDS[method.sequence];
  if (part === 'wideFace') return WIDE_FACE_WORDS[method.wideFace];
  if (part === 'minutes') return null;
  const preset = presetOf(method, part);
  if (preset) return preset.label;
  const nearest = nearestPreset(method, part);
  return nearest ? `${nearest.label}, with own figures` : 'Own figures';
}

function differingKeys(method: Method, other: Method, part: ComparedPart): string[] {
  const [own, theirs]: [object | string, object | string] = [method[part], other[part]];
  if (typeof own === 'string' || typeof theirs === 'string') return [];
  const values = new Map<string, unknown>(Object.entries(theirs));
  const keys = new Set([...Object.keys(own), ...values.keys()]);
  const ownValues = new Map<string, unknown>(Object.entries(own));
  return [...keys].filter((key) => ownValues.get(key) !== values.get(key));
}

/** The parts in which `method` is not as `other`, in the order of the work; empty when they are alike but for the name. */
export function methodDifferences(method: Method, other: Method): PartDifference[] {
  return (Object.keys(PART_WORDS) as ComparedPart[]).flatMap((part) => {
    const keys = differingKeys(method, other, part);
    const [own, theirs] = [partChoice(method, part), partChoice(other, part)];
    const chosen = own !== null && theirs !== null && own !== theirs ? { own, other: theirs } : null;
    return keys.length === 0 && chosen === null ? [] : [{ part, chosen, keys }];
  });
}

function partText({ part, chosen, keys }: PartDifference): string {
  const what = PART_WORDS[part];
  if (chosen) return `${what} (“${chosen.own}”, not “${chosen.other}”)`;
  return part === 'minutes' ? what : `${what} (${keys.length === 1 ? '1 figure' : `${keys.length} figures`})`;
}

/** "“Fixed stop” differs from “Marked line” in the blade (“Full kerf”, not “Thin kerf”)." */
export function methodDifferenceSentence(method: Method, other: Method): string {
  const differences = methodDifferences(method, other);
  if (differences.length === 0) return `“${method.name}” does everything as “${other.name}” does.`;
  return `“${method.name}” differs from “${other.name}” in ${listText(differences.map(partText))}.`;
}

const SIGNIFICANT_DIGITS = 4;

/** A figure of a method as its field shows it: "0.1 mm", "0.004 in", "0.5°", "12 N", "0.15". @param keyPath such as "blade.kerfMm" */
export function methodFigureText(keyPath: string, value: number, display: Display): string {
  const unit = fieldAt(`methods[].${keyPath}`)?.unit ?? '';
  const isInch = unit === 'mm' && display === 'inch';
  const text = String(Number((isInch ? value / MM_PER_INCH : value).toPrecision(SIGNIFICANT_DIGITS)));
  if (unit === '' || unit === '°') return `${text}${unit}`;
  return `${text} ${isInch ? 'in' : unit}`;
}
