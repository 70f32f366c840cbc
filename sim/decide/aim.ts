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

/** The joints of a flat frame are cut with the blade square; tilted, it would close as tight and be flat no more. */
function noAim(project: Project, methodIndex: number, trials: number, options: RunOptions): BestAim {
  const good = share(shortRun(aimed(project, methodIndex, 0), methodIndex, trials, options));
  return {
    trials,
    aimDeg: 0,
    alikeDeg: { from: 0, to: 0 },
    yield: good,
    gain: { value: 0, low: 0, high: 0 },
    curve: [{ aimDeg: 0, yield: good }],
  };
}

/** Yields the number of offsets tried so far after each; trials go into the close search. */
export function* bestAim(
  project: Project,
  methodIndex: number,
  options: RunOptions = {},
): Generator<number, BestAim, void> {
  const trials = options.trials ?? AIM_TRIALS;
  if (project.piece.slopeDeg === 90) return noAim(project, methodIndex, trials, options);
  const coarse = Math.min(trials, COARSE_TRIALS);
  const reach = reachDeg(project, methodIndex);
  let tried = 0;
  const points = new Map<number, ShortRun>();
  const tryAim = (aimDeg: number, count: number): ShortRun => {
    const run = shortRun(aimed(project, methodIndex, aimDeg), methodIndex, count, options);
    points.set(aimDeg, run);
    tried++;
    return run;
  };
  const step = (2 * reach) / (COARSE_POINTS - 1);
  let best = 0;
  for (let k = 0; k < COARSE_POINTS; k++) {
    // Written from the middle so that no aim at all is exactly 0.
    const aimDeg = (k - (COARSE_POINTS - 1) / 2) * step;
    if (tryAim(aimDeg, coarse).yield > (points.get(best)?.yield ?? -1)) best = aimDeg;
    yield tried;
  }
  // A level stretch of equal yields: its middle.
  const level = [...points].filter(([, run]) => run.yield === points.get(best)!.yield).map(([aimDeg]) => aimDeg);
  const centre = (Math.min(...level) + Math.max(...level)) / 2;
  const close: [number, ShortRun][] = [];
  for (let k = 0; k < FINE_POINTS; k++) {
    const aimDeg = centre + ((k - (FINE_POINTS - 1) / 2) * 2 * step) / (FINE_POINTS - 1);
    close.push([aimDeg, tryAim(aimDeg, trials)]);
    yield tried;
  }
  const [, top] = close.reduce((a, b) => (b[1].yield > a[1].yield ? b : a));
  const alike = close.filter(([, run]) => pairedYield(top, run).low <= 0).map(([aimDeg]) => aimDeg);
  const aimDeg = alike.reduce((sum, a) => sum + a, 0) / alike.length;
  const atBest = tryAim(aimDeg, trials);
  const atNone = tryAim(0, trials);
  return {
    trials,
    aimDeg,
    alikeDeg: { from: Math.min(...alike), to: Math.max(...alike) },
    yield: share(atBest),
    gain: pairedYield(atBest, atNone),
    curve: [...points].sort(([a], [b]) => a - b).map(([aim, run]) => ({ aimDeg: aim, yield: share(run) })),
  };
}
