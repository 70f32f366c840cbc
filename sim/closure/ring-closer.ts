/** Pulls one ring up and says how wide every joint stands open, by either rule and for each way of assembling it. */
import { WILL_NOT_CLOSE_MM } from '../geometry/thresholds';
import type { Assembly, Rule } from '../project/document';
import { contactSolver } from './contact';
import { inMisclosure, type JointGive, jointGive, largestAlong, lastJoints, stepRows } from './joint-give';
import type { RingMaps } from './ring-maps';
import { touchClosing } from './touch';

/** Misclosure rotation beyond which a ring glued stave by stave is not tried at all, radians. */
export const HOPELESS_ANGLE = (5 * Math.PI) / 180;

export interface RingCloser {
  give: JointGive;
  /** The rule that is really used. */
  rule: Rule;
  /** Largest opening of each joint on its outer and its inner side before pull-up, mm. */
  outer: Float64Array;
  inner: Float64Array;
  /**
   * Closes the ring with misclosure r (6 numbers from `at`) and row offsets `rows` (N bottoms, N middles, N tops from
   * `rowsAt`). For two halves `corners` holds what truing left: outer bottom, outer top, inner bottom, inner top of
   * either closing joint, 8 numbers from `cornersAt`. Returns whether the ring closes.
   */
  close(
    r: Float64Array,
    at: number,
    rows: Float64Array,
    rowsAt: number,
    corners: Float64Array,
    cornersAt: number,
  ): boolean;
  /** How far a stave of the ring just closed, with misclosure r, steps out past its neighbour at most, mm. */
  stepMm(r: Float64Array): number;
}

/** The joints that still give when the ring is pulled up. */
export function freeJoints(assembly: Assembly, sides: number): Int32Array {
  switch (assembly.by) {
    case 'allAtOnce':
      return lastJoints(sides, sides);
    case 'oneByOne':
      return lastJoints(sides, assembly.freeJoints);
    case 'twoHalves':
      return Int32Array.of(sides / 2 - 1, sides - 1);
  }
}

/** Gluing one by one is always computed by contact; touch knows only rings pulled up all at once. */
export function ruleUsed(assembly: Assembly, wanted: Rule): Rule {
  return assembly.by === 'oneByOne' ? 'contact' : wanted;
}

export function ringCloser(maps: RingMaps, assembly: Assembly, wanted: Rule): RingCloser {
  const n = maps.sides;
  const free = freeJoints(assembly, n);
  const give = jointGive(maps, free, assembly.ends);
  const outer = new Float64Array(n);
  const inner = new Float64Array(n);
  const hard = Int32Array.from({ length: n }, (_, j) => j).filter((j) => !free.includes(j));
  const solver = contactSolver(give);

  /** A joint glued tight stands open only where its faces are hollow. */
  function closeHard(rows: Float64Array, at: number): void {
    for (const j of hard) {
      const bottom = rows[at + j]!;
      const middle = rows[at + n + j]!;
      const top = rows[at + 2 * n + j]!;
      const spread = Math.max(bottom, middle, top) - Math.min(bottom, middle, top);
      outer[j] = spread;
      inner[j] = spread;
    }
  }

  function closes(): boolean {
    let largest = 0;
    for (let j = 0; j < n; j++) largest = Math.max(largest, outer[j]!, inner[j]!);
    return largest <= WILL_NOT_CLOSE_MM;
  }

  const steps = stepRows(give);
  const stepByContact = (): number => largestAlong(steps, solver.lambda);

  const byContact: RingCloser['close'] = (r, at, rows, rowsAt) => {
    const converged = solver.solve(r, at, rows, rowsAt);
    const y = solver.openings;
    for (let f = 0; f < free.length; f++) {
      const j = free[f]!;
      const c = y[f * 3 + 2]!;
      const most = Math.max(rows[rowsAt + j]! - c, rows[rowsAt + n + j]!, rows[rowsAt + 2 * n + j]! + c);
      outer[j] = y[f * 3]! + y[f * 3 + 1]! + most;
      inner[j] = y[f * 3]! - y[f * 3 + 1]! + most;
    }
    if (hard.length > 0) closeHard(rows, rowsAt);
    // Where bevels are too large no joint opens; the last staves are squeezed out of the ring instead.
    return converged && closes() && stepByContact() <= WILL_NOT_CLOSE_MM;
  };

  const oneByOne: RingCloser['close'] = (r, at, rows, rowsAt, corners, cornersAt) => {
    const angle = Math.hypot(r[at]!, r[at + 1]!, r[at + 2]!) / maps.scaleMm;
    return byContact(r, at, rows, rowsAt, corners, cornersAt) && angle <= HOPELESS_ANGLE;
  };

  const twoHalves: RingCloser['close'] = (_r, _at, rows, rowsAt, corners, cornersAt) => {
    closeHard(rows, rowsAt);
    free.forEach((j, k) => {
      const o = cornersAt + 4 * k;
      // The middle rows lie between their corners and so never decide.
      const outerMost = Math.max(corners[o]!, corners[o + 1]!);
      const innerMost = Math.max(corners[o + 2]!, corners[o + 3]!);
      const least = Math.min(corners[o]!, corners[o + 1]!, corners[o + 2]!, corners[o + 3]!);
      outer[j] = outerMost - least;
      inner[j] = innerMost - least;
    });
    return true;
  };

  const rule = ruleUsed(assembly, wanted);
  const shared = { give, rule, outer, inner };
  if (assembly.by === 'twoHalves') return { ...shared, close: twoHalves, stepMm: () => 0 };
  if (assembly.by === 'oneByOne') return { ...shared, close: oneByOne, stepMm: stepByContact };
  if (rule === 'contact') return { ...shared, close: byContact, stepMm: stepByContact };
  const linearSteps = inMisclosure(steps, give.linearInverse);
  return { ...shared, close: touchClosing(give, outer, inner), stepMm: (r) => largestAlong(linearSteps, r) };
}
