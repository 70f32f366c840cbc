/** Figures as the fields and drawings show them. Showing never changes the value that is kept. */
import type { AngleStyle, Display } from './field-props';
import { MM_PER_INCH } from './units';

const MOST_DECIMALS = 12;

/**
 * The number with up to `decimals` places, and with more when fewer than three digits would be left of a small one;
 * no zeros at the end, never an exponent.
 */
export function formatPlain(value: number, decimals = 3): string {
  const size = Math.abs(value);
  const forThreeDigits = size > 0 ? 2 - Math.floor(Math.log10(size)) : 0;
  const places = Math.min(MOST_DECIMALS, Math.max(decimals, size < 1 ? forThreeDigits : 0));
  // A nudge of one part in 10¹⁴, so that 600.075 (kept as 600.07499…) rounds as it is written.
  const text = (value * (1 + 1e-14)).toFixed(places);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

/** Nearest 1/64 as "23 5/8". */
function formatFraction(inches: number): string {
  const sixtyFourths = Math.round(Math.abs(inches) * 64);
  if (sixtyFourths === 0) return '0';
  const whole = Math.floor(sixtyFourths / 64);
  let top = sixtyFourths % 64;
  let bottom = 64;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const parts = [whole > 0 ? String(whole) : '', top > 0 ? `${top}/${bottom}` : ''].filter((part) => part !== '');
  return `${inches < 0 ? '-' : ''}${parts.join(' ')}`;
}

export interface LengthFormat {
  /** Inches as fractions to 1/64. */
  fractions?: boolean | undefined;
  /** Places after the point; left out: 3 for mm, 4 for inches. */
  decimals?: number | undefined;
  /** Adds " mm" or " in". */
  unit?: boolean | undefined;
}

/** A length given in mm, in the unit displayed. */
export function formatLength(mm: number, display: Display, format: LengthFormat = {}): string {
  const suffix = format.unit ? ` ${lengthUnit(display)}` : '';
  if (display === 'metric') return formatPlain(mm, format.decimals ?? 3) + suffix;
  const inches = mm / MM_PER_INCH;
  return (format.fractions ? formatFraction(inches) : formatPlain(inches, format.decimals ?? 4)) + suffix;
}

export function lengthUnit(display: Display): 'mm' | 'in' {
  return display === 'metric' ? 'mm' : 'in';
}

/** Degrees as "22.5°" with up to four places, or as "22° 30′" with minutes to a tenth. */
export function formatAngle(deg: number, style: AngleStyle, decimals = 4): string {
  if (style === 'decimal') return `${formatPlain(deg, decimals)}°`;
  const tenths = Math.round(Math.abs(deg) * 600);
  const minutes = (tenths % 600) / 10;
  const sign = deg < 0 && tenths > 0 ? '-' : '';
  return `${sign}${Math.floor(tenths / 600)}° ${minutes}′`;
}
