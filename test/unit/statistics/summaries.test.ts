import { expect, test } from 'vitest';
import { Moments } from '../../../sim/statistics/moments';
import { gapSummary, spreadSummary } from '../../../sim/statistics/summaries';

const hundredths = Float64Array.from({ length: 100 }, (_, i) => (i + 1) / 100);
// derived: 1 to 100 has variance (100² − 1)/12 with divisor n, 100·101/12 with divisor n − 1
const sd = Math.sqrt((100 * 101) / 12) / 100;

test('a gap summary tells mean, sample spread and the upper quantiles', () => {
  const { summary, intervals } = gapSummary(hundredths);
  expect(Object.keys(summary)).toEqual(['mean', 'sd', 'p50', 'p90', 'p95', 'p99']);
  expect(Object.keys(intervals)).toEqual(['p50', 'p90', 'p95', 'p99']);
  expect(summary.mean).toBeCloseTo(0.505, 14);
  expect(summary.sd).toBeCloseTo(sd, 14);
  expect(summary.p50).toBeCloseTo(0.505, 14);
  expect(summary.p90).toBeCloseTo(0.905, 14);
  expect(summary.p95).toBeCloseTo(0.955, 14);
  expect(summary.p99).toBeCloseTo(0.995, 14);
});

test('a spread summary tells mean, sample spread, median and the central 90 %', () => {
  const { summary, intervals } = spreadSummary(hundredths);
  expect(Object.keys(summary)).toEqual(['mean', 'sd', 'p05', 'p50', 'p95']);
  expect(Object.keys(intervals)).toEqual(['p05', 'p50', 'p95']);
  // published: the median of 100 lies between the values of rank 40 and 61 (tables of the sign test; from memory)
  expect(intervals.p50).toEqual({ low: 0.4, high: 0.61 });
  expect(summary.mean).toBeCloseTo(0.505, 14);
  expect(summary.sd).toBeCloseTo(sd, 14);
  expect(summary.p05).toBeCloseTo(0.055, 14);
  expect(summary.p50).toBeCloseTo(0.505, 14);
  expect(summary.p95).toBeCloseTo(0.955, 14);
});

test('moments already known are taken as they are', () => {
  const known = new Moments({ count: 2, mean: 7, squares: 9 });
  expect(gapSummary(hundredths, known).summary).toMatchObject({ mean: 7, sd: 3 });
  expect(spreadSummary(hundredths, known).summary).toMatchObject({ mean: 7, sd: 3 });
});
