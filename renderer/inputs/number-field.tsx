import { plainNumber } from '../../sim/wording/plain-number';
import type { NumberFieldProps, OptionalNumberFieldProps } from './field-props';
import { parsePlain } from './parse-quantity';
import { numbersOnly, QuantityField } from './quantity-field';

/** How a plain number is shown and read; the unit that stands after the field may be typed as well. */
export function numberEntry(unit: string | undefined) {
  return {
    show: (value: number) => plainNumber(value, 4),
    read: (text: string) => {
      const trimmed = text.trim();
      return parsePlain(unit && trimmed.endsWith(unit) ? trimmed.slice(0, -unit.length) : trimmed);
    },
    style: '',
    unit,
  };
}

/** A plain number. */
export function NumberField({ unit, onChange, ...field }: NumberFieldProps) {
  return <QuantityField {...field} {...numberEntry(unit)} onChange={numbersOnly(onChange)} />;
}

/** A plain number that may be left empty. */
export function OptionalNumberField({ unit, ...field }: OptionalNumberFieldProps) {
  return <QuantityField {...field} {...numberEntry(unit)} />;
}
