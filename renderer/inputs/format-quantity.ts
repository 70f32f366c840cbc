/** Figures as the fields show them: close enough to go on typing from. Showing never changes the value that is kept. */
import { MM_PER_INCH } from '../../sim/geometry/thresholds';
import { lengthText } from '../../sim/wording/figures';
import type { AngleStyle, Display } from './field-props';

const MOST_DECIMALS = 12;

/**
 * The number with up to `decimals` places, and with more when fewer than three digits would be left of a small one;
 * no zeros at the end, never an exponent.
 */
export function formatPlain(value: number, decimals = 3): string {
  const size = Math.abs(value);
  const forThreeDigits = size > 0 ? 2 - Math.floor(Math.log10(size)) : 0;
  const places = Math.min(MOST_DECIMALS, Math.max(decimals, size < 1 ? forThreeDigits : 0));
  // Fifteen digits and the least nudge, so that 600.075, kept as 600.07499…, rounds the way it is written.
  const written = Number(value.toPrecision(15));
  const text = (Number.isInteger(written) ? written : written * (1 + 2 * Number.EPSILON)).toFixed(places);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

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
  if (display === 'metric') return formatPlain(mm, format.decimals ?? 3) + suffix;
  const inches = mm / MM_PER_INCH;
  if (format.fractions && isFractionFit(inches)) return lengthText(mm, display, { fractions: true });
  return formatPlain(inches, format.decimals ?? 4) + suffix;
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
  if (style === 'decimal') return `${formatPlain(deg, 4)}°`;
  const tenths = Math.round(Math.abs(deg) * 600);
  const [minutes = '', tenth] = String((tenths % 600) / 10).split('.');
  const sign = deg < 0 && tenths > 0 ? '-' : '';
  return `${sign}${Math.floor(tenths / 600)}°${minutes.padStart(2, '0')}${tenth ? `.${tenth}` : ''}′`;
}
