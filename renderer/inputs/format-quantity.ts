/** Figures as the fields show them: close enough to go on typing from. Showing never changes the value that is kept. */
import { MM_PER_INCH } from '../../sim/geometry/thresholds';
import { lengthText } from '../../sim/wording/figures';
import { plainNumber } from '../../sim/wording/plain-number';
import type { AngleStyle, Display } from './field-props';

export interface LengthFormat {
  /** Inches as fractions to 1/64; small figures that are no such fraction stay decimal. */
  fractions?: boolean | undefined;
  /** Places after the point; left out: 3 for mm, 4 for inches. */
  decimals?: number | undefined;
  /** Adds " mm" or " in". */
  unit?: boolean | undefined;
}

/** Gaps and other small figures between the sixty-fourths would be lost in a fraction. */
function isFractionFit(inches: number): boolean {
  const sixtyFourths = inches * 64;
  return Math.abs(inches) >= 0.25 || Math.abs(sixtyFourths - Math.round(sixtyFourths)) < 1e-6;
}

function lengthWithUnit(mm: number, display: Display, format: LengthFormat, suffix: string): string {
  if (display === 'metric') return plainNumber(mm, format.decimals ?? 3) + suffix;
  const inches = mm / MM_PER_INCH;
  if (format.fractions && isFractionFit(inches)) return lengthText(mm, display, { fractions: true });
  return plainNumber(inches, format.decimals ?? 4) + suffix;
}

/** A length given in mm, in the unit displayed. */
export function formatLength(mm: number, display: Display, format: LengthFormat = {}): string {
  const suffix = ` ${lengthUnit(display)}`;
  const text = lengthWithUnit(mm, display, format, suffix);
  return format.unit ? text : text.slice(0, -suffix.length);
}

export function lengthUnit(display: Display): 'mm' | 'in' {
  return display === 'metric' ? 'mm' : 'in';
}

/** Degrees as "22.5°" with up to four places, or as "22°30′", the minutes to a tenth. */
export function formatAngle(deg: number, style: AngleStyle): string {
  if (style === 'decimal') return `${plainNumber(deg, 4)}°`;
  const tenths = Math.round(Math.abs(deg) * 600);
  const [minutes = '', tenth] = String((tenths % 600) / 10).split('.');
  const sign = deg < 0 && tenths > 0 ? '-' : '';
  return `${sign}${Math.floor(tenths / 600)}°${minutes.padStart(2, '0')}${tenth ? `.${tenth}` : ''}′`;
}
