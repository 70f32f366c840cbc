import { useId } from 'react';
import { Input, TextField } from 'react-aria-components';
import { FieldHead, FieldNotes, useHelp } from './field-head';
import type { FieldProps } from './field-props';
import { type Reading, useEntry } from './use-entry';

export interface QuantityFieldProps extends FieldProps<number | null> {
  show: (value: number) => string;
  read: (text: string) => Reading;
  /** Changes when `show` shows in other units. */
  style: string;
  /** The text after the field; left out where the text itself carries its unit. */
  unit?: string | undefined;
  /** What an empty field stands for; left out: it may not be empty. */
  whenEmpty?: string | undefined;
  /** The label is spoken but not shown, where a slider beside it shows it already. */
  isBesideSlider?: boolean;
}

/** A field for one figure, typed in any way the units allow; length, angle and number fields are made of it. */
export function QuantityField(props: QuantityFieldProps) {
  const { label, value, show, read, unit, whenEmpty, problem, help, origin, isBesideSlider = false } = props;
  const unitId = useId();
  const helpState = useHelp();
  const entry = useEntry({
    value,
    style: props.style,
    show: (shown) => (shown === null ? '' : show(shown)),
    read: (text) =>
      whenEmpty !== undefined && text.trim() === '' ? { ok: true, value: null, understood: whenEmpty } : read(text),
    onChange: props.onChange,
    onGestureStart: props.onGestureStart,
    onGestureEnd: props.onGestureEnd,
  });
  const shownProblem = entry.sentence ?? (entry.isTyping ? undefined : problem);
  return (
    <TextField
      className={isBesideSlider ? 'field field-beside' : 'field'}
      value={entry.text}
      onChange={entry.type}
      onBlur={entry.settle}
      onKeyDown={(event) => {
        if (event.key === 'Enter') entry.settle();
        // A dialog around the field closes on Escape only when there was nothing to take back.
        if (event.key === 'Escape' && entry.restore()) return;
        event.continuePropagation();
      }}
      isInvalid={shownProblem !== undefined}
      isDisabled={props.isDisabled ?? false}
      validationBehavior="aria"
      {...(isBesideSlider ? { 'aria-label': `${label}, typed` } : {})}
      {...(unit === undefined ? {} : { 'aria-describedby': unitId })}
    >
      {!isBesideSlider && <FieldHead label={label} help={help} state={helpState} />}
      <span className="field-entry">
        <Input className="field-input" placeholder={whenEmpty ?? ''} autoComplete="off" spellCheck={false} />
        {unit !== undefined && (
          <span id={unitId} className="field-unit">
            {unit}
          </span>
        )}
        <span className="field-understood" aria-live="polite">
          {entry.understood === undefined ? '' : `= ${entry.understood}`}
        </span>
      </span>
      <FieldNotes problem={shownProblem} help={help} origin={origin} state={helpState} />
    </TextField>
  );
}

/** `onChange` for fields that may not be empty: they never read a text as null. */
export function numbersOnly(onChange: (value: number) => void): (value: number | null) => void {
  return (value) => {
    if (value !== null) onChange(value);
  };
}
