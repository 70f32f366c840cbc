/** What a method is put together from, in the order of the work, and the figures behind each choice. */
import type { Minutes } from '../../sim/project/document';
import type { ChoiceFieldKey, NumberField } from '../../sim/project/fields';
import type { SectionKey } from '../../sim/project/key';
import { ASSEMBLY, BLADE, GUIDE, MINUTES, TEST, TILT, WIDTH } from '../../sim/project/method-keys';
import type { MethodPart } from '../../sim/project/preset';

type FigureTable = Readonly<Record<string, NumberField | ChoiceFieldKey>>;

export interface Part {
  name: MethodPart;
  question: string;
  /** Keys of its section in the order in which they are shown. */
  figures: readonly string[];
}

/** All keys of a section, those named `first` before the others. */
function figuresOf<Keys extends FigureTable>(
  { keys }: SectionKey<Keys, 'present'>,
  ...first: (keyof Keys & string)[]
): string[] {
  return [...new Set([...first, ...Object.keys(keys)])];
}

export const PARTS_BEFORE_SEQUENCE: readonly Part[] = [
  // The figure that tells most about a method comes before the bias, which is 0 in most.
  { name: 'tilt', question: 'How the tilt is set', figures: figuresOf(TILT, 'sharedDeg', 'shape') },
  { name: 'guide', question: 'What carries the work', figures: figuresOf(GUIDE) },
  { name: 'width', question: 'What fixes the stave width', figures: figuresOf(WIDTH) },
  { name: 'blade', question: 'Blade', figures: figuresOf(BLADE) },
];

export const PARTS_AFTER_SEQUENCE: readonly Part[] = [
  { name: 'assembly', question: 'How the ring is put together', figures: figuresOf(ASSEMBLY) },
  { name: 'test', question: 'Test cuts', figures: figuresOf(TEST) },
];

export const MINUTES_KEYS = Object.keys(MINUTES.keys) as (keyof Minutes)[];
