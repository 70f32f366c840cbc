/** The one scale of gaps that curve and dots share, from 0 to a round figure, in the unit on the screen. */
import { MM_PER_INCH, WILL_NOT_CLOSE_MM } from '../../sim/geometry/thresholds';
import type { Display } from '../inputs/field-props';
import { evenScale } from './even-scale';

export interface GapScale {
  maxMm: number;
  ticksMm: number[];
  /** One press of an arrow key: a hundredth of a millimetre, or half a thousandth of an inch. */
  stepMm: number;
}

const LEAST_MM = 0.05;

/**
 * @param wantedMm what should lie on the scale; nothing is drawn where a ring does not close any more
 * @param limitMm always on the scale
 */
export function gapScale(wantedMm: number, limitMm: number, display: Display): GapScale {
  const unitMm = display === 'metric' ? 1 : MM_PER_INCH;
  const { max, ticks } = evenScale(0, Math.max(Math.min(wantedMm, WILL_NOT_CLOSE_MM), limitMm, LEAST_MM), unitMm);
  return { maxMm: max, ticksMm: ticks, stepMm: display === 'metric' ? 0.01 : 0.0005 * MM_PER_INCH };
}

/** Of a step between two ticks, where a curve is told point by point. */
const FINER = 10;

/** Points along the whole scale, the ticks among them, mm. */
export function finerTicks({ maxMm, ticksMm }: GapScale): number[] {
  const count = FINER * (ticksMm.length - 1);
  return Array.from({ length: count + 1 }, (_, i) => Number(((maxMm * i) / count).toPrecision(12)));
}

/** The nearest step on the scale, without the dust of binary fractions. */
export function snapped(mm: number, { stepMm, maxMm }: GapScale): number {
  const kept = Math.min(Math.max(mm, 0), maxMm);
  return Number((Math.round(kept / stepMm) * stepMm).toFixed(6));
}
