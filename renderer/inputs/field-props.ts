import type { ReactNode } from 'react';
import type { AngleStyle, Display } from '../../sim/wording/figures';

export type { AngleStyle, Display };

/**
 * What every field takes. `onChange` comes on every valid keystroke and on every move of a slider;
 * all changes between `onGestureStart` and `onGestureEnd` belong to one undo step.
 */
export interface FieldProps<Value> {
  label: string;
  value: Value;
  onChange: (value: Value) => void;
  onGestureStart?: (() => void) | undefined;
  onGestureEnd?: (() => void) | undefined;
  /** The sentence shown beside the field when its value cannot be used. */
  problem?: string | undefined;
  /** One sentence, opened by the small "?" beside the label. */
  help?: string | undefined;
  /** Where the figure comes from, shown quietly under the field. */
  origin?: ReactNode;
  isDisabled?: boolean | undefined;
}

/** What an empty field stands for, e.g. "just enough"; the value is then null. */
export interface MayBeEmpty {
  whenEmpty: string;
}

export interface LengthStyle {
  display: Display;
  /** Inches as fractions to 1/64 in place of decimals. */
  fractions?: boolean | undefined;
}

/** `value` in mm. */
export interface LengthFieldProps extends FieldProps<number>, LengthStyle {}
/** `value` in mm, null when left empty. */
export interface OptionalLengthFieldProps extends FieldProps<number | null>, LengthStyle, MayBeEmpty {}

/** `value` in degrees. */
export interface AngleFieldProps extends FieldProps<number> {
  angleStyle?: AngleStyle | undefined;
}

/** A plain number; `unit` is the text after the field ("N", "min", "%"). */
export interface NumberFieldProps extends FieldProps<number> {
  unit?: string | undefined;
}
export interface OptionalNumberFieldProps extends FieldProps<number | null>, MayBeEmpty {
  unit?: string | undefined;
}

export interface Choice<Value extends string> {
  value: Value;
  label: string;
  /** A few quiet words under the label. */
  note?: string | undefined;
}

/** Up to four choices lie side by side (`row`) or under each other (`column`); more become a list that opens (`menu`). */
export interface ChoiceFieldProps<Value extends string> extends FieldProps<Value> {
  choices: readonly Choice<Value>[];
  layout?: 'row' | 'column' | 'menu' | undefined;
}

/** The slider's `value`, `min`, `max` and `step` are all in the unit of its kind: mm, degrees or a plain number. */
export type SliderFieldProps = FieldProps<number> & { min: number; max: number; step: number } & (
    | ({ kind: 'length' } & LengthStyle)
    | { kind: 'angle'; angleStyle?: AngleStyle | undefined }
    | { kind: 'number'; unit?: string | undefined }
  );
