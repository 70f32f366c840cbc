import { plainNumber } from '../../sim/wording/plain-number';
import type { AngleFieldProps, AngleStyle } from './field-props';
import { formatAngle } from './format-quantity';
import { parseAngle } from './parse-quantity';
import { numbersOnly, QuantityField } from './quantity-field';

/** How an angle is shown and read, in decimal degrees or in degrees and minutes. */
export function angleEntry(style: AngleStyle) {
  return {
    show: (deg: number) => (style === 'decimal' ? plainNumber(deg, 4) : formatAngle(deg, 'minutes')),
    read: parseAngle,
    style,
    unit: style === 'decimal' ? '°' : undefined,
  };
}

/** An angle in degrees. */
export function AngleField({ angleStyle = 'decimal', onChange, ...field }: AngleFieldProps) {
  return <QuantityField {...field} {...angleEntry(angleStyle)} onChange={numbersOnly(onChange)} />;
}
