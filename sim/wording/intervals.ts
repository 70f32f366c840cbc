/** A figure with its 95 % interval in brackets: no more digits than the interval allows, the unit said once. */
import type { Interval } from '../statistics/estimates';
import { type Display, gapText, lengthText } from './figures';

/** "0.31 mm (0.30 to 0.32)": a gap and where it lies. */
export function gapWithInterval(mm: number, interval: Interval, display: Display): string {
  return withInterval(mm, interval, (each, offMm) => gapText(each, display, offMm));
}

/** "249.8 mm (249.7 to 249.9)": a length and where it lies. */
export function lengthWithInterval(mm: number, interval: Interval, display: Display): string {
  return withInterval(mm, interval, (each, offMm) => lengthText(each, display, { uncertaintyMm: offMm }));
}

function withInterval(mm: number, { low, high }: Interval, text: (mm: number, offMm: number) => string): string {
  // Among the rings that will not close there is nothing to measure.
  if (!Number.isFinite(mm)) return 'will not close';
  if (!Number.isFinite(high - low)) return text(mm, 0);
  const [seen, least, most] = [mm, low, high].map((each) => text(each, (high - low) / 2));
  // Beyond what is told, the ends would say no more than the figure does.
  if (least === most && least?.startsWith('over')) return least;
  const bare = (length = ''): string => length.replace(/ \D+$/, '');
  return `${seen} (${bare(least)} to ${bare(most)})`;
}
