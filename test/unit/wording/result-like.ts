/** A method's result with the figures a sentence is about; the rest is plain and harmless. */
import type { MethodPrediction, MethodResult } from '../../../sim/run/prediction';
import type { Interval, Share } from '../../../sim/statistics/estimates';

export const share = (value: number, low = value, high = value): Share => ({ value, low, high });

const NEVER = share(0, 0, 0.0004);
const ALWAYS = share(1, 0.9996, 1);

function offBy<Part extends string>(figures: Record<Part, number>, off: number): Record<Part, Interval> {
  const entries = Object.entries<number>(figures).map(([part, value]) => [
    part,
    { low: value - off, high: value + off },
  ]);
  return Object.fromEntries(entries) as Record<Part, Interval>;
}

export function resultLike(name: string, figures: Partial<MethodPrediction> = {}): MethodResult {
  const prediction: MethodPrediction = {
    name,
    trials: 10_000,
    rule: 'contact',
    stopReason: 'trial-limit',
    cuts: 24,
    pitchMm: 80.41,
    stripNeededMm: 1179.9,
    tiltSharedAfterTestDeg: { mean: 0, sd: 0.1 },
    mouthMm: { mean: 0, sd: 6, p05: -10.2, p50: 0, p95: 10.4 },
    showGapMm: { mean: 0.05, sd: 0.05, p50: 0.07, p90: 0.12, p95: 0.165, p99: 0.25 },
    hiddenGapMm: { mean: 0.05, sd: 0.05, p50: 0.07, p90: 0.12, p95: 0.16, p99: 0.25 },
    jointShowGapP95Mm: [0.1, 0.1, 0.1],
    clearOpeningMm: { mean: 249.8, sd: 1, p05: 247.9, p50: 249.81, p95: 251.7 },
    yield: share(0.83, 0.82, 0.84),
    insertFits: ALWAYS,
    willNotClose: NEVER,
    cost: { perGoodPiece: 80, low: 79, high: 81, minutesPerPiece: 75, testRounds: 0 },
    ...figures,
  };
  const { p50, p95 } = prediction.showGapMm;
  const gaps = Float64Array.from({ length: 10_000 }, (_, ring) => p50 + ((p95 - p50) * (ring - 5000)) / 4500);
  return {
    prediction,
    sample: { showGapMm: gaps, otherwiseGoodShowGapMm: gaps },
    byRing: {
      showGapMm: gaps,
      hiddenGapMm: gaps,
      mouthMm: new Float64Array(10_000),
      stepMm: new Float64Array(10_000),
      good: new Uint8Array(10_000).fill(1),
      closes: new Uint8Array(10_000).fill(1),
      insertFits: new Uint8Array(10_000).fill(1),
    },
    minutesInterval: { low: 74, high: 76 },
    intervals: {
      hiddenGapMm: offBy({ p50: 0.07, p90: 0.12, p95: 0.16, p99: 0.25 }, 0.004),
      mouthMm: offBy({ p05: -10.2, p50: 0, p95: 10.4 }, 0.2),
      clearOpeningMm: offBy({ p05: 247.9, p50: 249.81, p95: 251.7 }, 0.04),
      outOfRoundMm: offBy({ p05: 0.6, p50: 1, p95: 1.4 }, 0.03),
      stepMm: offBy({ p05: 0.06, p50: 0.1, p95: 0.14 }, 0.002),
    },
    setUps: { money: Float64Array.of(80), pieces: Float64Array.of(1) },
    grades: { good: 8300, rework: 1500, scrap: 200 },
    outOfRoundMm: { mean: 1, sd: 0.2, p05: 0.6, p50: 1, p95: 1.4 },
    stepMm: { mean: 0.1, sd: 0.02, p05: 0.06, p50: 0.1, p95: 0.14 },
  };
}
