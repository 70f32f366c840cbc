/**
 * A deliberate offset of the tilt trades show gaps for hidden gaps. Which offset makes most pieces good?
 * Every offset is tried on the same random numbers, first coarsely, then closely around the best.
 */

import { anglesOf } from '../errors/face-index';
import { RADIANS_PER_DEGREE } from '../geometry/ring';
import type { Project } from '../project/document';
import { outputsOf } from '../run/output-matrix';
import { methodPlan } from '../run/plan';
import type { RunOptions } from '../run/run-method';
import { pairedYield, type ShortRun, shortRun } from '../run/short-run';
import type { Share } from '../statistics/estimates';
import { wilson } from '../statistics/wilson';

export const AIM_TRIALS = 10_000;
const COARSE_TRIALS = 2_000;
const COARSE_POINTS = 21;
const FINE_POINTS = 9;
const MOST_AIM_DEG = 5;

export interface AimPoint {
  aimDeg: number;
  yield: Share;
}

export interface BestAim {
  /** Rings behind the figures at the best aim; the curve has fewer far from it. */
  trials: number;
  /** Offset that makes most pieces good, degrees; the middle of the stretch that cannot be told from the best. Always 0 for a flat frame. */
  aimDeg: number;
  /** That stretch, as far as it was tried closely. */
  alikeDeg: { from: number; to: number };
  yield: Share;
  /** What it gains over no aim at all, with its 95 % interval on common random numbers. */
  gain: { value: number; low: number; high: number };
  /** Yield over aim, ascending. */
  curve: AimPoint[];
}

function aimed(project: Project, methodIndex: number, aimDeg: number): Project {
  const methods = project.methods.map((m, i) => (i === methodIndex ? { ...m, tilt: { ...m.tilt, aimDeg } } : m));
  return { ...project, methods };
}

/** Reach of the search: beyond it a shared error alone would open every joint by more than the limits allow. */
function reachDeg(project: Project, methodIndex: number): number {
  const plan = methodPlan(project, methodIndex, { sizes: false });
  const { give } = plan.closer;
  const r = outputsOf(plan.matrix, anglesOf(plan.cuts, 'bevel', RADIANS_PER_DEGREE));
  let turn = 0;
  for (let f = 0; f < give.free.length; f++) {
    let b = 0;
    for (let k = 0; k < 6; k++) b += give.linear[(f * 3 + 1) * 6 + k]! * r[k]!;
    turn = Math.max(turn, Math.abs(2 * b));
  }
  const { limits } = project;
  const { pullUpMm } = plan.method.assembly;
  const widest = Math.max(limits.showGapMm, limits.hiddenGapMm) + pullUpMm;
  const { tilt } = plan.method;
  const spread = Math.abs(tilt.biasDeg) + 3 * tilt.sharedDeg;
  const wanted = turn > 0 ? 1.5 * (widest / turn) + spread : 0.5;
  return Math.min(MOST_AIM_DEG, Math.max(0.02, wanted));
}

function share(run: ShortRun): Share {
  return wilson(Math.round(run.yield * run.trials), run.trials);
}

/** One offset to be tried with so many rings. */
export interface AimTrial {
  aimDeg: number;
  rings: number;
}

export function tryAim(
  project: Project,
  methodIndex: number,
  { aimDeg, rings }: AimTrial,
  options: RunOptions = {},
): ShortRun {
  return shortRun(aimed(project, methodIndex, aimDeg), methodIndex, rings, options);
}

/** A flat frame's joints are cut with the blade square; tilted, it would close as tight and be flat no more. */
const isFlat = (project: Project): boolean => project.piece.slopeDeg === 90;

/** How many offsets a search tries. */
export function aimTrials(project: Project): number {
  return isFlat(project) ? 1 : COARSE_POINTS + FINE_POINTS + 2;
}

/** Yields offsets to be tried together and takes in their runs, in the same order; the rings asked for go into the close search. */
export function* aimSearch(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
): Generator<AimTrial[], BestAim, ShortRun[]> {
  const trials = options.trials ?? AIM_TRIALS;
  const noAim = { aimDeg: 0, rings: trials };
  if (isFlat(project)) {
    const good = share((yield [noAim])[0]!);
    const gain = { value: 0, low: 0, high: 0 };
    return { trials, aimDeg: 0, alikeDeg: { from: 0, to: 0 }, yield: good, gain, curve: [{ aimDeg: 0, yield: good }] };
  }
  const points = new Map<number, ShortRun>();
  function* tried(offsets: readonly number[], rings: number): Generator<AimTrial[], ShortRun[], ShortRun[]> {
    const runs = yield offsets.map((aimDeg) => ({ aimDeg, rings }));
    offsets.forEach((aimDeg, k) => {
      points.set(aimDeg, runs[k]!);
    });
    return runs;
  }
  const step = (2 * reachDeg(project, methodIndex)) / (COARSE_POINTS - 1);
  // Written from the middle so that no aim at all is exactly 0.
  const coarse = Array.from({ length: COARSE_POINTS }, (_, k) => (k - (COARSE_POINTS - 1) / 2) * step);
  const most = Math.max(...(yield* tried(coarse, Math.min(trials, COARSE_TRIALS))).map((run) => run.yield));
  // A level stretch of equal yields: its middle.
  const level = coarse.filter((aimDeg) => points.get(aimDeg)!.yield === most);
  const centre = (Math.min(...level) + Math.max(...level)) / 2;
  const close = Array.from({ length: FINE_POINTS }, (_, k) => {
    return centre + ((k - (FINE_POINTS - 1) / 2) * 2 * step) / (FINE_POINTS - 1);
  });
  const closeRuns = yield* tried(close, trials);
  const top = closeRuns.reduce((a, b) => (b.yield > a.yield ? b : a));
  const alike = close.filter((_, k) => pairedYield(top, closeRuns[k]!).low <= 0);
  const aimDeg = alike.reduce((sum, a) => sum + a, 0) / alike.length;
  const [atBest, atNone] = yield* tried([aimDeg, 0], trials);
  return {
    trials,
    aimDeg,
    alikeDeg: { from: Math.min(...alike), to: Math.max(...alike) },
    yield: share(atBest!),
    gain: pairedYield(atBest!, atNone!),
    curve: [...points].sort(([a], [b]) => a - b).map(([aim, run]) => ({ aimDeg: aim, yield: share(run) })),
  };
}
