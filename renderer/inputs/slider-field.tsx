import { useRef } from 'react';
import { Slider, SliderFill, SliderThumb, SliderTrack } from 'react-aria-components';
import { MM_PER_INCH } from '../../sim/geometry/thresholds';
import { angleEntry } from './angle-field';
import { FieldHead, useHelp } from './field-head';
import type { SliderFieldProps } from './field-props';
import { lengthEntry } from './length-field';
import { numberEntry } from './number-field';
import { numbersOnly, QuantityField } from './quantity-field';
import './slider.css';

/** What the slider moves in: its own value times `size` is the field's value. */
interface SliderScale {
  size: number;
  step: number;
  spoken: Intl.NumberFormatOptions;
}

/** The step nearest to `step` that is 1, 2 or 5 times a power of ten. */
function evenStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  const nearest = [1, 2, 5, 10].reduce((a, b) => (Math.abs(b * power - step) < Math.abs(a * power - step) ? b : a));
  return Number((nearest * power).toPrecision(1));
}

function scaleOf(props: SliderFieldProps): SliderScale {
  const style = { style: 'unit', unitDisplay: 'long', maximumFractionDigits: 4 } as const;
  switch (props.kind) {
    case 'length':
      return props.display === 'metric'
        ? { size: 1, step: props.step, spoken: { ...style, unit: 'millimeter' } }
        : { size: MM_PER_INCH, step: evenStep(props.step / MM_PER_INCH), spoken: { ...style, unit: 'inch' } };
    case 'angle':
      return { size: 1, step: props.step, spoken: { ...style, unit: 'degree' } };
    case 'number':
      return { size: 1, step: props.step, spoken: { maximumFractionDigits: 4 } };
  }
}

function entryOf(props: SliderFieldProps) {
  switch (props.kind) {
    case 'length':
      return lengthEntry(props);
    case 'angle':
      return angleEntry(props.angleStyle ?? 'decimal');
    case 'number':
      return numberEntry(props.unit);
  }
}

/** A figure that can be dragged, or typed beside the slider where any value may be given, also one past its ends. */
export function SliderField(props: SliderFieldProps) {
  const { label, value, onChange, onGestureStart, onGestureEnd, help, isDisabled = false } = props;
  const helpState = useHelp();
  const isMoving = useRef(false);
  const scale = scaleOf(props);
  const end = () => {
    if (!isMoving.current) return;
    isMoving.current = false;
    onGestureEnd?.();
  };
  return (
    <div className="field slider-field">
      <Slider
        className="slider"
        value={value / scale.size}
        minValue={props.min / scale.size}
        maxValue={props.max / scale.size}
        step={scale.step}
        formatOptions={scale.spoken}
        isDisabled={isDisabled}
        onChange={(moved) => {
          const next = Number((moved * scale.size).toPrecision(14));
          if (next === value) return;
          if (!isMoving.current) {
            isMoving.current = true;
            onGestureStart?.();
          }
          onChange(next);
        }}
        onChangeEnd={end}
      >
        <FieldHead label={label} help={help} state={helpState} />
        <SliderTrack className="slider-track">
          <SliderFill className="slider-fill" />
          {/* Arrow keys move the slider without saying when they are done; the released key says it. */}
          <SliderThumb className="slider-thumb" onKeyUp={end} onBlur={end} />
        </SliderTrack>
      </Slider>
      <QuantityField
        {...entryOf(props)}
        label={label}
        value={value}
        onChange={numbersOnly(onChange)}
        onGestureStart={onGestureStart}
        onGestureEnd={onGestureEnd}
        problem={props.problem}
        origin={props.origin}
        isDisabled={isDisabled}
        isBesideSlider
      />
      {help !== undefined && (
        <span id={helpState.panelId} className="field-help" hidden={!helpState.isOpen}>
          {help}
        </span>
      )}
    </div>
  );
}
