/**
 * What an accepted piece costs: set-ups are simulated, not attempts. The shared errors are drawn once per set-up, after
 * its test cuts; pieces are attempted at that setting until the batch is done; after two scraps the maker sets up, and
 * tests, again. The ratio of all costs to all pieces has a delta-method interval over the set-ups (ratio estimator;
 * Cochran, Sampling Techniques, 3rd ed. 1977, ch. 6).
 */

import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import { ringGrading, setUps } from '../run/block';
import { GOOD, REWORK } from '../run/grade';
import { openRows } from '../run/joint-rows';
import type { MethodPlan } from '../run/plan';
import type { CostSummary } from '../run/prediction';
import { normalQuantile } from '../statistics/normal-distribution';

/** Attempts that may fail in a row of a thousand before no cost per piece is given. */
const LEAST_SUCCESS_SHARE = 1 / 1000;
const SCRAPS_BEFORE_SETTING_UP_AGAIN = 2;
const MINUTES_PER_RECUT = 1;
const BATCH_RINGS = 250;

/** Set-ups simulated for a run of so many rings: enough to rank methods, few enough not to slow the run. */
export function setUpsFor(trials: number): number {
  return Math.min(2000, Math.max(200, Math.round(trials / 20)));
}

/** With large batches the attempts are what takes time; then fewer set-ups must do. */
const ENOUGH_ATTEMPTS = 6000;
const LEAST_SET_UPS = 40;

interface Attempt {
  grade: number;
  recuts: number;
}

/** Gives one attempted piece after another, at the shared outputs it is handed. */
function attempts(plan: MethodPlan, seed: number): (shared: Float64Array, at: number) => Attempt {
  const { width } = plan.matrix;
  const own = new Float64Array(BATCH_RINGS * width);
  const ring = new Float64Array(width);
  const pour = plan.perPiece.open(seed, 0, 'attempt');
  const rows = openRows(plan.list, plan.engine, seed, 0, 'attempt', BATCH_RINGS);
  const halves = plan.method.assembly.by === 'twoHalves';
  const corners = new Float64Array(halves ? 8 * BATCH_RINGS : 0);
  const truing = stream(seed, 'attempt truing', 0);
  const grading = ringGrading(plan, 1);
  let next = BATCH_RINGS;
  return (shared, at) => {
    if (next === BATCH_RINGS) {
      own.fill(0);
      pour(own, BATCH_RINGS);
      rows.pour(BATCH_RINGS);
      fillNormals(truing, corners);
      for (let k = 0; k < corners.length; k++) corners[k]! *= plan.list.truingMm;
      next = 0;
    }
    for (let o = 0; o < width; o++) ring[o] = shared[at + o]! + own[next * width + o]!;
    grading.grade(0, ring, 0, rows.rows, next, corners, 8 * next);
    const recuts = rows.recuts[next]!;
    next++;
    return { grade: grading.result.grade[0]!, recuts };
  };
}

/** Cost, minutes and test rounds of a method. Interval at 95 %. */
export function pieceCost(plan: MethodPlan, seed: number, setUpCount: number): CostSummary {
  const { costs } = plan.project;
  const { minutes } = plan.method;
  const { width } = plan.matrix;
  const rounds = new Uint8Array(setUpCount);
  const shared = setUps(plan, seed, 0, rounds);
  const attempt = attempts(plan, seed);
  const money: number[] = [];
  const pieces: number[] = [];
  let [totalMinutes, totalAttempts, totalRounds] = [0, 0, 0];
  let missing = costs.batch;
  for (let s = 0; s < setUpCount; s++) {
    if (totalAttempts >= ENOUGH_ATTEMPTS && s >= LEAST_SET_UPS) break;
    let time = minutes.setUp + rounds[s]! * minutes.perTestRound;
    let stock = rounds[s]! * costs.testStockPerRound;
    let [made, scraps] = [0, 0];
    while (missing > 0 && scraps < SCRAPS_BEFORE_SETTING_UP_AGAIN) {
      const { grade, recuts } = attempt(shared, s * width);
      totalAttempts++;
      time += minutes.perCut * plan.cuts.length + costs.assemblyMinutes + recuts * MINUTES_PER_RECUT;
      stock += costs.stockPerRing * (1 + recuts / plan.maps.sides);
      if (grade === GOOD || grade === REWORK) {
        made++;
        missing--;
        if (grade === REWORK) time += costs.remedyMinutes;
      } else scraps++;
    }
    if (missing === 0) missing = costs.batch;
    totalMinutes += time;
    totalRounds += rounds[s]!;
    money.push(stock + (time / 60) * costs.ratePerHour);
    pieces.push(made);
  }
  const done = money.length;
  const made = pieces.reduce((sum, p) => sum + p, 0);
  const testRounds = totalRounds / done;
  if (made < totalAttempts * LEAST_SUCCESS_SHARE || made === 0) {
    return { perGoodPiece: null, low: null, high: null, minutesPerPiece: null, testRounds };
  }
  const ratio = money.reduce((sum, m) => sum + m, 0) / made;
  let squares = 0;
  for (let s = 0; s < done; s++) squares += (money[s]! - ratio * pieces[s]!) ** 2;
  const error = Math.sqrt((squares * done) / (done - 1)) / made;
  const reach = normalQuantile(0.975) * error;
  return {
    perGoodPiece: ratio,
    low: Math.max(0, ratio - reach),
    high: ratio + reach,
    minutesPerPiece: totalMinutes / made,
    testRounds,
  };
}
