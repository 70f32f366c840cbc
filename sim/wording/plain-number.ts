/** Figures as they were typed: never rounder than what was put in. */
const MOST_DECIMALS = 12;

/**
 * The number with up to `decimals` places, and with more when fewer than three digits would be left of a small one;
 * no zeros at the end, never an exponent.
 */
export function plainNumber(value: number, decimals = 3): string {
  const size = Math.abs(value);
  const forThreeDigits = size > 0 ? 2 - Math.floor(Math.log10(size)) : 0;
  const places = Math.min(MOST_DECIMALS, Math.max(decimals, size < 1 ? forThreeDigits : 0));
  // Fifteen digits and the least nudge, so that 600.075, kept as 600.07499…, rounds the way it is written.
  const written = Number(value.toPrecision(15));
  const text = (Number.isInteger(written) ? written : written * (1 + 2 * Number.EPSILON)).toFixed(places);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}
