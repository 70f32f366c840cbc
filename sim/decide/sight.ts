/** What an eye makes out, to hold a gap against. */

/** At the end of an arm; our own choice. */
export const ARM_LENGTH_MM = 400;

/**
 * The smallest distance that a good eye tells apart from so far away, mm.
 *
 * Source: visual acuity 1.0 tells apart one minute of arc (ISO 8596, standard optotype; from memory). A dark line on
 * light wood is noticed when it is narrower still, but not as an opening.
 */
export function seenGapMm(distanceMm = ARM_LENGTH_MM): number {
  return distanceMm * Math.tan(Math.PI / 180 / 60);
}
