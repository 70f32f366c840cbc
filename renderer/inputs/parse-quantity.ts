/** Reads what somebody types into a field: 23 5/8 in, 18 mm + 1/16 in, 22°30', 1,5. */
import { MM_PER_INCH } from '../../sim/geometry/thresholds';
import { plainNumber } from '../../sim/wording/plain-number';
import { evaluateExpression, inBareUnit } from './evaluate-expression';
import type { Display } from './field-props';
import { formatAngle, formatLength } from './format-quantity';
import { NotUnderstood } from './not-understood';
import { spellOut } from './spell-out';
import type { Dimension } from './units';

/** `value` in mm, degrees or plain; `understood` the same with its unit, rounded. Else the sentence that says what is wrong. */
export type Parsed = { ok: true; value: number; understood: string } | { ok: false; sentence: string };

interface Wanted {
  dimension: Dimension | 'none';
  /** Size of a number without a unit, in mm or degrees. */
  bareSize: number;
  /** Largest size that is still taken for a figure and not for a slip. */
  most: number;
  noun: string;
  example: string;
  show: (value: number) => string;
}

const LONGEST_TEXT = 80;

/** A length in mm from -100 m to 100 m; a number without a unit is in mm or inches, as displayed. */
export function parseLength(text: string, display: Display): Parsed {
  return read(text, {
    dimension: 'length',
    bareSize: display === 'inch' ? MM_PER_INCH : 1,
    most: 100_000,
    noun: 'A length',
    example: 'Give a length such as 600, 23 5/8 in or 18 mm + 1/16 in.',
    show: (mm) => formatLength(mm, display, { decimals: display === 'inch' ? 4 : 2, unit: true }),
  });
}

/** An angle in degrees from -360 to 360; a number without a unit is in degrees. */
export function parseAngle(text: string): Parsed {
  return read(text, {
    dimension: 'angle',
    bareSize: 1,
    most: 360,
    noun: 'An angle',
    example: "Give an angle such as 22.5 or 22°30'.",
    show: (deg) => formatAngle(deg, 'decimal'),
  });
}

/** A plain number within a million million either way. */
export function parsePlain(text: string): Parsed {
  return read(text, {
    dimension: 'none',
    bareSize: 1,
    most: 1e12,
    noun: 'A number',
    example: 'Give a number such as 12, 0.5 or 1/8.',
    show: plainNumber,
  });
}

/** Whether the text is a number and nothing else, so that saying what was understood would only repeat it. */
export function isBareNumber(text: string): boolean {
  return /^\s*[-\u2212]?(\d+\.?\d*|\.\d+)\s*$/.test(text);
}

function read(text: string, wanted: Wanted): Parsed {
  const trimmed = text.trim();
  if (trimmed === '') return { ok: false, sentence: `Nothing is written here. ${wanted.example}` };
  if (trimmed.length > LONGEST_TEXT) {
    return {
      ok: false,
      sentence: `This is ${trimmed.length} characters long, over ${LONGEST_TEXT}. ${wanted.example}`,
    };
  }
  try {
    return { ok: true, ...understand(trimmed, wanted) };
  } catch (error) {
    if (error instanceof NotUnderstood) return { ok: false, sentence: error.message };
    throw error;
  }
}

function understand(text: string, wanted: Wanted): { value: number; understood: string } {
  const bare = { dimension: wanted.dimension, size: wanted.bareSize };
  const figure = inBareUnit(evaluateExpression(spellOut(text, wanted.dimension), bare), bare);
  if (figure.dimension !== wanted.dimension) {
    const seen = figure.dimension === 'length' ? 'a length' : 'an angle';
    throw new NotUnderstood(`"${text}" is ${seen}. ${wanted.example}`);
  }
  if (!(Math.abs(figure.value) <= wanted.most)) {
    throw new NotUnderstood(
      `${wanted.noun} of over ${wanted.show(wanted.most)} is out of reach here. ${wanted.example}`,
    );
  }
  // Fourteen digits: 23 5/8 in is then kept as 600.075 and not as 600.0749999999999. The sum turns -0 into 0.
  const value = Number(figure.value.toPrecision(14)) + 0;
  return { value, understood: wanted.show(value) };
}
