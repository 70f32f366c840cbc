/** Counts of a joint's gaps, so that percentiles of every joint cost no memory per ring. */

const BIN_MM = 0.001;
const BINS = 2000;

/** One bin for no gap at all, 2000 of one micrometre, one for everything over 2 mm. */
export const GAP_BINS = BINS + 2;

export function gapBin(gapMm: number): number {
  if (gapMm > BINS * BIN_MM) return BINS + 1;
  // No branch at 0, where half of all gaps lie on either side.
  return Math.ceil((gapMm + Math.abs(gapMm)) * (0.5 / BIN_MM));
}

/** The p-quantile, mm, of the counts from `at`; evenly spread within a bin. Over 2 mm it is given as 2. */
export function histogramQuantile(counts: Uint32Array, at: number, total: number, p: number): number {
  const rank = p * total;
  let below = 0;
  for (let bin = 0; bin < GAP_BINS; bin++) {
    const count = counts[at + bin]!;
    if (below + count >= rank && count > 0) {
      if (bin === 0) return 0;
      if (bin > BINS) return BINS * BIN_MM;
      return BIN_MM * (bin - 1 + (rank - below) / count);
    }
    below += count;
  }
  return BINS * BIN_MM;
}
