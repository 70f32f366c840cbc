/** Are test cuts worth the wood? The same method with none, one, two … rounds, on the same luck. */
import type { Method, Project, TestKind } from '../project/document';
import { jobCosts, pieceCost, setUpsFor } from '../run/cost';
import { methodPlan } from '../run/plan';
import type { CostSummary } from '../run/prediction';
import type { RunOptions } from '../run/run-method';
import { shortRun } from '../run/short-run';
import type { Interval, Share } from '../statistics/estimates';
import { Moments } from '../statistics/moments';
import { NORMAL_975 } from '../statistics/normal-distribution';
import { wilson } from '../statistics/wilson';
import type { TestSetting } from '../testing/test-reading';

export const TEST_VALUE_TRIALS = 10_000;
const FEWEST_ROUNDS_SHOWN = 4;

export interface RoundsValue {
  maxRounds: number;
  yield: Share;
  cost: CostSummary;
  /** Of the minutes a good piece takes; null where those are. */
  minutesInterval: Interval | null;
  /** Cost of a whole job less that of the same job without tests; mean with its 95 % interval. */
  extraCost: { value: number; low: number; high: number };
  /** Chance that testing makes the job cheaper. */
  pays: Share;
}

export interface TestValue {
  trials: number;
  /** Jobs behind every extra cost. */
  jobs: number;
  kind: TestKind;
  /** What the reading corrects and how much it tells; null when it says too little to correct anything. */
  reading: TestSetting | null;
  /** From no rounds up. */
  rounds: RoundsValue[];
  /** Rounds that cost least per accepted piece; null when no number of rounds gives pieces at all. */
  bestRounds: number | null;
}

/** The method as it is tried: one without test cuts with full test rings, and never with fewer rounds than are shown. */
export function asTried(method: Method): Method {
  const { kind, maxRounds } = method.test;
  return {
    ...method,
    test: {
      ...method.test,
      kind: kind === 'none' ? 'fullRing' : kind,
      maxRounds: Math.max(FEWEST_ROUNDS_SHOWN, maxRounds),
    },
  };
}

/** Most rounds that are tried; what comes out is the same for every method that is tried alike. */
export function mostRounds(project: Project, methodIndex: number): number {
  return asTried(project.methods[methodIndex]!).test.maxRounds;
}

/** What came of one number of rounds. */
export interface RoundsTried {
  maxRounds: number;
  goodRings: number;
  /** Cost of every whole job; the same place is the same luck whatever the rounds. */
  jobs: Float64Array;
  cost: CostSummary;
  minutes: Interval | null;
  reading: TestSetting | null;
}

/** The method with at most so many rounds. */
export function testRounds(
  project: Project,
  methodIndex: number,
  maxRounds: number,
  options: RunOptions = {},
): RoundsTried {
  const trials = options.trials ?? TEST_VALUE_TRIALS;
  const seed = options.seed ?? project.run.seed;
  const { kind } = asTried(project.methods[methodIndex]!).test;
  const methods = project.methods.map((m, i) =>
    i === methodIndex ? { ...m, test: { ...m.test, kind, maxRounds } } : m,
  );
  const variant = { ...project, methods };
  const plan = methodPlan(variant, methodIndex, { ...options, sizes: false });
  const run = shortRun(variant, methodIndex, trials, options);
  const { summary, minutes } = pieceCost(plan, seed, setUpsFor(trials));
  return {
    maxRounds,
    goodRings: Math.round(run.yield * trials),
    jobs: jobCosts(plan, seed, setUpsFor(trials)),
    cost: summary,
    minutes,
    reading: plan.test ? { setting: plan.test.setting, mmPerDeg: plan.test.mmPerDeg } : null,
  };
}

/** The whole answer from what came of each number of rounds, from none up. */
export function testValueOf(
  project: Project,
  methodIndex: number,
  tried: readonly RoundsTried[],
  options: RunOptions = {},
): TestValue {
  const trials = options.trials ?? TEST_VALUE_TRIALS;
  const without = tried[0]!.jobs;
  const rounds = tried.map(({ maxRounds, goodRings, jobs, cost, minutes }): RoundsValue => {
    const extra = jobs.map((money, k) => money - without[k]!);
    const moments = new Moments().add(extra);
    const reach = NORMAL_975 * moments.standardError;
    return {
      maxRounds,
      yield: wilson(goodRings, trials),
      cost,
      minutesInterval: minutes,
      extraCost: { value: moments.mean, low: moments.mean - reach, high: moments.mean + reach },
      pays: wilson(extra.filter((e) => e < 0).length, extra.length),
    };
  });
  const priced = rounds.filter((r) => r.cost.perGoodPiece !== null);
  const best = priced.reduce<RoundsValue | null>(
    (least, r) => (least === null || r.cost.perGoodPiece! < least.cost.perGoodPiece! ? r : least),
    null,
  );
  return {
    trials,
    jobs: setUpsFor(trials),
    kind: asTried(project.methods[methodIndex]!).test.kind,
    reading: tried.findLast(({ reading }) => reading !== null)?.reading ?? null,
    rounds,
    bestRounds: best?.maxRounds ?? null,
  };
}
