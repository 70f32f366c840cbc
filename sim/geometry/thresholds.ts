/** Lengths at which the program begins or ends to speak of a thing, mm. */

/** Half of the last digit in which gaps are told: a gap below it is none that could be shown. */
export const NO_GAP_MM = 0.005;

/** A joint that stands open further than this has not closed; beyond it the sums of small errors do not hold either. */
export const WILL_NOT_CLOSE_MM = 2;

/** What a gap of a ring that will not close counts at least in percentiles: wider than any of a ring that closes. */
export const COUNTED_OVER_MM = WILL_NOT_CLOSE_MM + 0.001;

/** An inch is 25.4 mm by definition (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;
