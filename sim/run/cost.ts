/**
 * What an accepted piece costs: set-ups are simulated, not attempts. The shared errors are drawn once per set-up, after
 * its test cuts; pieces are attempted at that setting until the batch is done; after two scraps the maker sets up, and
 * tests, again. The ratio of all costs to all pieces has a delta-method interval over the set-ups (ratio estimator;
 * Cochran, Sampling Techniques, 3rd ed. 1977, ch. 6).
 */

import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import type { Interval } from '../statistics/estimates';
import { studentQuantile } from '../statistics/student';
import { ringGrading } from './block';
import { finish } from './block-loop';
import { setUps } from './draw-rings';
import { GOOD, REWORK } from './grade';
import { openRows } from './joint-rows';
import type { MethodPlan } from './plan';
import type { CostSummary } from './prediction';

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
/** Whoever stops a run is waiting: a rough cost must do then. */
const ROUGH = { setUps: 200, attempts: 2000, leastSetUps: 5 };

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

/** What was spent at one set-up and what came of it. */
interface SetUpWork {
  money: number;
  minutes: number;
  made: number;
  attempts: number;
}

/** Works at one set-up until `missing` pieces are made or two are scrap. */
function workAtSetUp(
  plan: MethodPlan,
  attempt: (shared: Float64Array, at: number) => Attempt,
  shared: Float64Array,
  setUp: number,
  rounds: number,
  missing: number,
): SetUpWork {
  const { costs } = plan.project;
  const { minutes } = plan.method;
  let time = minutes.setUp + rounds * minutes.perTestRound;
  let stock = rounds * costs.testStockPerRound;
  let [made, scraps] = [0, 0];
  while (made < missing && scraps < SCRAPS_BEFORE_SETTING_UP_AGAIN) {
    const { grade, recuts } = attempt(shared, setUp * plan.matrix.width);
    time += minutes.perCut * plan.cuts.length + costs.assemblyMinutes + recuts * MINUTES_PER_RECUT;
    stock += costs.stockPerRing * (1 + recuts / plan.maps.sides);
    if (grade === GOOD || grade === REWORK) {
      made++;
      if (grade === REWORK) time += costs.remedyMinutes;
    } else scraps++;
  }
  return { money: stock + (time / 60) * costs.ratePerHour, minutes: time, made, attempts: made + scraps };
}

/** A method's cost, and the set-ups behind it one by one, so that methods can be compared on the same luck. */
export interface PieceCost {
  summary: CostSummary;
  /** The 95 % interval of the minutes a good piece takes; null where they are. */
  minutes: Interval | null;
  money: Float64Array;
  pieces: Float64Array;
}

/** `pieceCostSteps` in one go. */
export function pieceCost(plan: MethodPlan, seed: number, setUpCount: number): PieceCost {
  return finish(pieceCostSteps(plan, seed, setUpCount));
}

/**
 * Cost, minutes and test rounds of a method, yielding after every set-up; the interval is at 95 %, by Student's t since
 * a rough cost rests on a handful of set-ups.
 *
 * @param shouldStop asked after every set-up; once true, the few set-ups of a rough cost must do
 */
export function* pieceCostSteps(
  plan: MethodPlan,
  seed: number,
  setUpCount: number,
  shouldStop: () => boolean = () => false,
): Generator<void, PieceCost, void> {
  const { batch } = plan.project.costs;
  const rounds = new Uint8Array(setUpCount);
  const shared = setUps(plan, seed, 0, rounds);
  const attempt = attempts(plan, seed);
  const money = new Float64Array(setUpCount);
  const pieces = new Float64Array(setUpCount);
  const minutes = new Float64Array(setUpCount);
  let [totalAttempts, totalRounds, totalMade] = [0, 0, 0];
  let missing = batch;
  let done = 0;
  const isEnough = (): boolean => {
    if (done >= setUpCount || (totalAttempts >= ENOUGH_ATTEMPTS && done >= LEAST_SET_UPS)) return true;
    const isRough = done >= ROUGH.setUps || (totalAttempts >= ROUGH.attempts && done >= ROUGH.leastSetUps);
    return isRough && shouldStop();
  };
  while (!isEnough()) {
    const work = workAtSetUp(plan, attempt, shared, done, rounds[done]!, missing);
    missing = missing === work.made ? batch : missing - work.made;
    money[done] = work.money;
    pieces[done] = work.made;
    minutes[done] = work.minutes;
    totalAttempts += work.attempts;
    totalRounds += rounds[done]!;
    totalMade += work.made;
    done++;
    yield;
  }
  const setUpsDone = { money: money.subarray(0, done), pieces: pieces.subarray(0, done) };
  const testRounds = totalRounds / done;
  if (totalMade === 0 || totalMade < totalAttempts * LEAST_SUCCESS_SHARE) {
    const summary = { perGoodPiece: null, low: null, high: null, minutesPerPiece: null, testRounds };
    return { summary, minutes: null, ...setUpsDone };
  }
  const reach = studentQuantile(0.975, done - 1);
  const cost = ratioWithInterval(setUpsDone.money, setUpsDone.pieces, reach);
  const time = ratioWithInterval(minutes.subarray(0, done), setUpsDone.pieces, reach);
  const summary = {
    perGoodPiece: cost.value,
    low: cost.low,
    high: cost.high,
    minutesPerPiece: time.value,
    testRounds,
  };
  return { summary, minutes: { low: time.low, high: time.high }, ...setUpsDone };
}

/**
 * All that was spent over all that was made, with its interval over the set-ups.
 *
 * @param standardErrors how many of them the interval reaches to either side
 */
function ratioWithInterval(
  spent: Float64Array,
  made: Float64Array,
  standardErrors: number,
): Interval & { value: number } {
  const count = spent.length;
  let [totalSpent, totalMade] = [0, 0];
  for (let s = 0; s < count; s++) {
    totalSpent += spent[s]!;
    totalMade += made[s]!;
  }
  const value = totalSpent / totalMade;
  let squares = 0;
  for (let s = 0; s < count; s++) squares += (spent[s]! - value * made[s]!) ** 2;
  const reach = (standardErrors * Math.sqrt((squares * count) / (count - 1))) / totalMade;
  return { value, low: Math.max(0, value - reach), high: value + reach };
}

/** A job that takes more set-ups than this is given up and counts with what it has cost so far. */
const MOST_SET_UPS_A_JOB = 40;

/** What each of `jobs` whole batches costs; the same job meets the same first set-up in every variant of a method. */
export function jobCosts(plan: MethodPlan, seed: number, jobs: number): Float64Array {
  const { batch } = plan.project.costs;
  const rounds = new Uint8Array(jobs);
  const shared = setUps(plan, seed, 0, rounds);
  const againRounds = new Uint8Array(jobs);
  const again = setUps(plan, seed, 1, againRounds);
  const attempt = attempts(plan, seed);
  let next = 0;
  return Float64Array.from({ length: jobs }, (_, job) => {
    const first = workAtSetUp(plan, attempt, shared, job, rounds[job]!, batch);
    let money = first.money;
    let missing = batch - first.made;
    for (let k = 1; missing > 0 && k < MOST_SET_UPS_A_JOB; k++) {
      const work = workAtSetUp(plan, attempt, again, next, againRounds[next]!, missing);
      next = (next + 1) % jobs;
      money += work.money;
      missing -= work.made;
    }
    return money;
  });
}
