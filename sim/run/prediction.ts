/** What a run gives back. `Prediction` is, key for key, the JSON object of `predict --json`. Units are in the names. */
import type { GeometrySummary } from '../geometry/ring';
import type { Rule, SourceName } from '../project/document';
import type { GapPart, GapSummary, Interval, Share, SpreadPart, SpreadSummary } from '../statistics/estimates';

export interface BudgetLine {
  source: SourceName;
  varianceShare: number;
  showGapP95WithoutMm: number;
}

/** `perGoodPiece` and its interval are null when fewer than one attempt in a thousand gives a piece. */
export interface CostSummary {
  perGoodPiece: number | null;
  low: number | null;
  high: number | null;
  minutesPerPiece: number | null;
  testRounds: number;
}

export type StopReason = 'settled' | 'trial-limit' | 'cancelled';

export interface MethodPrediction {
  name: string;
  trials: number;
  rule: Rule;
  /** Only where it is asked for: the same input gives the same bytes otherwise. */
  elapsedMs?: number;
  stopReason: StopReason;
  cuts: number;
  pitchMm: number;
  stripNeededMm: number;
  tiltSharedAfterTestDeg: { mean: number; sd: number };
  mouthMm: SpreadSummary;
  showGapMm: GapSummary;
  hiddenGapMm: GapSummary;
  jointShowGapP95Mm: number[];
  clearOpeningMm: SpreadSummary;
  yield: Share;
  insertFits: Share;
  willNotClose: Share;
  budget?: BudgetLine[];
  /** Only where it is asked for; null where touch has no say. */
  touchExcess?: { trials: number; meanMm: number; p95Mm: number } | null;
  cost: CostSummary;
}

export interface Prediction {
  format: 'ringtrue-prediction';
  version: 1;
  title: string;
  seed: number;
  geometry: GeometrySummary;
  methods: MethodPrediction[];
}

/** The worst gaps of every simulated ring of one method, for charts and paired sentences. */
export interface RingSample {
  /** Worst gap on the show side(s), mm, ascending; one number a ring. */
  showGapMm: Float64Array;
  /** The same, of those rings alone that pass everything except the show limit (hidden gap, insert, closing), ascending. */
  otherwiseGoodShowGapMm: Float64Array;
}

/** One method's result inside the program: the printed prediction and what the charts need besides. */
export interface MethodResult {
  prediction: MethodPrediction;
  sample: RingSample;
  /** Ring by ring in the order they were drawn: the same place is the same luck in every method. */
  byRing: {
    showGapMm: Float64Array;
    hiddenGapMm: Float64Array;
    mouthMm: Float64Array;
    /** Empty when sizes are not followed. */
    stepMm: Float64Array;
    good: Uint8Array;
    closes: Uint8Array;
    insertFits: Uint8Array;
  };
  /** Of the minutes a good piece takes; null where those are. */
  minutesInterval: Interval | null;
  /** Of the percentiles of what is measured at every ring; those of the gap that shows follow from `sample`. */
  intervals: {
    hiddenGapMm: Record<GapPart, Interval>;
    mouthMm: Record<SpreadPart, Interval>;
    clearOpeningMm: Record<SpreadPart, Interval>;
    outOfRoundMm: Record<SpreadPart, Interval>;
    stepMm: Record<SpreadPart, Interval>;
  };
  /** Money spent and pieces made at each simulated set-up, in order. */
  setUps: { money: Float64Array; pieces: Float64Array };
  /** Rings graded good, rework and scrap; they add up to `prediction.trials`. */
  grades: { good: number; rework: number; scrap: number };
  /** 95th percentile of the wood that truing takes off an end face, mm; only for two halves. */
  truingRemovesMm?: number;
  /** Flats: largest less smallest, mm. */
  outOfRoundMm: SpreadSummary;
  /** How far a stave steps out past its neighbour at most, mm. */
  stepMm: SpreadSummary;
}

/** What a running prediction tells while it works. */
export interface RunProgress {
  /** Index of the method in the project. */
  method: number;
  ringsDone: number;
  ringsWanted: number;
}
