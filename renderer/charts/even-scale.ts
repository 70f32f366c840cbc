/** A scale with round ticks between any two figures, in whatever unit they are in. */
export interface EvenScale {
  min: number;
  max: number;
  ticks: number[];
}

const STEPS = [1, 2, 2.5, 5, 10];
const MOST_TICKS = 7;

/** Covers `low` to `high`; `unit` is how much one of the unit shown is worth (25.4 for inches kept in mm). */
export function evenScale(low: number, high: number, unit = 1): EvenScale {
  const [least, most] = [low / unit, Math.max(high, low) / unit];
  const span = most - least || 1;
  const power = 10 ** Math.floor(Math.log10(span / (MOST_TICKS - 1)));
  const step = (STEPS.find((s) => span / (s * power) <= MOST_TICKS - 1) ?? 10) * power;
  const first = Math.floor(least / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(most / step - 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step * unit).toPrecision(12)));
  return { min: ticks[0] ?? 0, max: ticks.at(-1) ?? 1, ticks };
}
