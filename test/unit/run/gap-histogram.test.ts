/** Percentiles of every joint from counts, against the sorted gaps themselves. */
import { describe, expect, test } from 'vitest';
import { exponential } from '../../../sim/random/draws';
import { stream } from '../../../sim/random/streams';
import { GAP_BINS, gapBin, histogramQuantile } from '../../../sim/run/gap-histogram';
import { quantile, sortedCopy } from '../../../sim/statistics/quantiles';

function counted(gaps: Float64Array): Uint32Array {
  const counts = new Uint32Array(GAP_BINS + 5);
  for (const gap of gaps) counts[5 + gapBin(gap)]!++;
  return counts;
}

describe('a percentile from counts', () => {
  const generator = stream(8, 'gaps', 0);
  const gaps = Float64Array.from({ length: 20_000 }, () => Math.max(0, exponential(generator, 0.1) - 0.05));

  test('is the percentile of the gaps to a micrometre', () => {
    const sorted = sortedCopy(gaps);
    for (const p of [0.1, 0.5, 0.9, 0.95, 0.99, 0.999]) {
      expect(Math.abs(histogramQuantile(counted(gaps), 5, gaps.length, p) - quantile(sorted, p))).toBeLessThan(0.001);
    }
  });

  test('is exactly 0 where that many joints are tight', () => {
    // 1 − e^−0.5 = 39 % are tight
    expect(histogramQuantile(counted(gaps), 5, gaps.length, 0.38)).toBe(0);
    expect(histogramQuantile(counted(gaps), 5, gaps.length, 0.41)).toBeGreaterThan(0);
  });

  test('is never drawn beyond 2 mm', () => {
    const wide = counted(Float64Array.of(0.1, 2.5, 30));
    expect(histogramQuantile(wide, 5, 3, 0.95)).toBe(2);
  });
});

describe('bins', () => {
  test('keep no gap at all apart from the smallest one, and everything over 2 mm together', () => {
    expect([gapBin(0), gapBin(-0.3), gapBin(1e-9), gapBin(0.0009), gapBin(0.0011)]).toEqual([0, 0, 1, 1, 2]);
    expect(gapBin(1.9999)).toBe(GAP_BINS - 2);
    expect([gapBin(2.0001), gapBin(1e9)]).toEqual([GAP_BINS - 1, GAP_BINS - 1]);
  });
});
