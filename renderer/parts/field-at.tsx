/** One field of the project, shown by the input that suits its kind and unit; its words, unit and range come from the table of keys. */
import { type ReactNode, useId } from 'react';
import { type ChoiceFieldKey, keyAt, labelOnPage, optionLabel } from '../../sim/project/fields';
import { AngleField } from '../inputs/angle-field';
import { ChoiceField } from '../inputs/choice-field';
import type { Choice, ChoiceFieldProps } from '../inputs/field-props';
import { LengthField, OptionalLengthField } from '../inputs/length-field';
import { NumberField, OptionalNumberField } from '../inputs/number-field';
import { beginGesture, endGesture, useDocument } from '../state/document-store';
import { useProblemAt } from '../state/problems';
import { useView } from '../state/view-store';

interface About {
  /** Key path in the project, such as `methods[0].blade.kerfMm`. */
  path: string;
  /** In place of the name that the table has for pages. */
  label?: string;
  /** In place of the help in the table. */
  help?: string;
  origin?: ReactNode;
}

interface Edited<Value> extends About {
  value: Value;
  onChange: (value: Value) => void;
}

const gesture = { onGestureStart: beginGesture, onGestureEnd: endGesture };

function useWords({ path, label, help, origin }: About) {
  const key = keyAt(path);
  const problem = useProblemAt(path);
  return { label: label ?? (key ? labelOnPage(key) : path), help: help ?? key?.help, origin, problem };
}

function useNumber(about: About) {
  const common = { ...useWords(about), ...gesture };
  const key = keyAt(about.path);
  const { unit = '', whenEmpty = '' } = key?.kind === 'number' ? key : {};
  const display = useDocument((state) => state.project.display);
  const fractions = useView((view) => view.inchFractions);
  const angleStyle = useView((view) => view.angleStyle);
  return { unit, whenEmpty, common, lengthStyle: { display, fractions }, angleStyle };
}

export function NumberAt({ value, onChange, ...about }: Edited<number>) {
  const { unit, common, lengthStyle, angleStyle } = useNumber(about);
  if (unit === 'mm') return <LengthField {...common} {...lengthStyle} value={value} onChange={onChange} />;
  if (unit === '°') return <AngleField {...common} angleStyle={angleStyle} value={value} onChange={onChange} />;
  return <NumberField {...common} unit={unit || undefined} value={value} onChange={onChange} />;
}

export function OptionalNumberAt({ value, onChange, ...about }: Edited<number | null>) {
  const { unit, whenEmpty, common, lengthStyle } = useNumber(about);
  const given = { value, onChange, whenEmpty };
  if (unit === 'mm') return <OptionalLengthField {...common} {...lengthStyle} {...given} />;
  return <OptionalNumberField {...common} unit={unit || undefined} {...given} />;
}

function choicesOf(key: ChoiceFieldKey): Choice<string>[] {
  return Object.entries(key.options).map(([value, words]) => {
    return { value, label: optionLabel(key, value), note: typeof words === 'string' ? undefined : words.note };
  });
}

interface ChoiceAtProps<Value extends string> extends Edited<Value> {
  layout?: ChoiceFieldProps<Value>['layout'];
}

export function ChoiceAt<Value extends string>({ value, onChange, layout, ...about }: ChoiceAtProps<Value>) {
  const common = useWords(about);
  const key = keyAt(about.path);
  const choices = (key?.kind === 'choice' ? choicesOf(key) : []) as Choice<Value>[];
  return <ChoiceField {...common} layout={layout} value={value} choices={choices} onChange={onChange} />;
}

interface TextAtProps extends About {
  value: string | undefined;
  /** undefined where a key that may be left out is emptied. */
  onChange: (value: string | undefined) => void;
  placeholder?: string;
  /** More than one line. */
  rows?: number;
  spellCheck?: boolean;
}

export function TextAt({ value = '', onChange, rows, path, label, placeholder, spellCheck }: TextAtProps) {
  const id = useId();
  const key = keyAt(path);
  const { most, presence } = key?.kind === 'text' ? key : {};
  const change = (text: string): void => onChange(text === '' && presence === 'optional' ? undefined : text);
  const common = { id, value, placeholder, spellCheck, maxLength: most, onFocus: beginGesture, onBlur: endGesture };
  return (
    <label className="text-entry" htmlFor={id}>
      {label ?? (key ? labelOnPage(key) : path)}
      {rows === undefined ? (
        <input {...common} onChange={(event) => change(event.target.value)} />
      ) : (
        <textarea rows={rows} {...common} onChange={(event) => change(event.target.value)} />
      )}
    </label>
  );
}

/** What a field can hold; null and undefined where it is left empty. */
export type FieldValue = number | string | null | undefined;

/** Whatever kind of field stands at the path: for lists of fields that follow the table. */
export function FieldAt({ value, onChange, ...about }: Edited<FieldValue>) {
  const key = keyAt(about.path);
  if (key?.kind === 'choice') {
    const layout = Object.keys(key.options).length > 4 ? 'menu' : 'column';
    return <ChoiceAt {...about} layout={layout} value={`${value}`} onChange={onChange} />;
  }
  if (key?.kind === 'text') return <TextAt {...about} value={`${value ?? ''}`} onChange={onChange} />;
  const number = typeof value === 'number' ? value : null;
  if (key?.kind !== 'number' || key.whenEmpty === undefined) {
    return <NumberAt {...about} value={number ?? 0} onChange={onChange} />;
  }
  // Left empty, an optional key is left out of the file; any other holds null there.
  const empty = key.presence === 'optional' ? undefined : null;
  return <OptionalNumberAt {...about} value={number} onChange={(next) => onChange(next ?? empty)} />;
}
