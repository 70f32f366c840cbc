import type { LengthFieldProps, LengthStyle, OptionalLengthFieldProps } from './field-props';
import { formatLength, lengthUnit } from './format-quantity';
import { parseLength } from './parse-quantity';
import { numbersOnly, QuantityField } from './quantity-field';

/** How a length is shown, read and named in the unit displayed. */
export function lengthEntry({ display, fractions }: LengthStyle) {
  return {
    show: (mm: number) => formatLength(mm, display, { fractions }),
    read: (text: string) => parseLength(text, display),
    style: `${display} ${fractions === true}`,
    unit: lengthUnit(display),
  };
}

/** A length in mm, shown in mm or inches. */
export function LengthField({ display, fractions, onChange, ...field }: LengthFieldProps) {
  return <QuantityField {...field} {...lengthEntry({ display, fractions })} onChange={numbersOnly(onChange)} />;
}

/** A length in mm that may be left empty. */
export function OptionalLengthField({ display, fractions, ...field }: OptionalLengthFieldProps) {
  return <QuantityField {...field} {...lengthEntry({ display, fractions })} />;
}
