/**
 * The contact rule against an outsider: the same quadratic programme, written out in full and given to a general solver
 * (npm package quadprog, the dual method of Goldfarb & Idnani, Mathematical Programming 27, 1983, 1–33).
 */
import { solveQP } from 'quadprog';
import { expect, test } from 'vitest';
import { contactSolver } from '../../sim/closure/contact';
import { jointGive, lastJoints } from '../../sim/closure/joint-give';
import { misclosureOf, type RingMaps, ringMaps } from '../../sim/closure/ring-maps';
import type { Ends } from '../../sim/project/document';
import { stream } from '../../sim/random/streams';
import { faceErrors, geometryOf, type RingSizes, randomErrors, withOpening } from '../support/rings';
import { slidesFor } from '../support/slides-for';

interface Closing {
  maps: RingMaps;
  free: Int32Array;
  ends: Ends;
  r: Float64Array;
  rows: Float64Array;
}

/** Per free joint a, b, c, turn, slide up the edge, slide through the thickness. */
function byGeneralSolver({ maps, free, ends, r, rows }: Closing): number[] {
  const give = jointGive(maps, free, ends);
  const n = maps.sides;
  const size = free.length * 6;
  const square = () => Array.from({ length: size + 1 }, () => new Array<number>(size + 1).fill(0));
  const D = square();
  const constraints = 6 + 6 * free.length;
  const A = Array.from({ length: size + 1 }, () => new Array<number>(constraints + 1).fill(0));
  const bounds = new Array<number>(constraints + 1).fill(0);
  for (let k = 0; k < 6; k++) bounds[1 + k] = -r[k]!;
  let next = 7;
  free.forEach((joint, f) => {
    for (let k = 0; k < 6; k++) {
      const variable = 1 + f * 6 + k;
      D[variable]![variable] = k < 3 ? 1 : give.slideWeights[k - 3]!;
      const column = k < 3 ? maps.openingColumns : maps.slideColumns;
      for (let i = 0; i < 6; i++) A[variable]![1 + i] = column[joint * 18 + (k % 3) * 6 + i]!;
    }
    for (const row of [-1, 0, 1]) {
      for (const side of [1, -1]) {
        A[1 + f * 6]![next] = 1;
        A[2 + f * 6]![next] = side;
        A[3 + f * 6]![next] = row;
        bounds[next] = -rows[(row + 1) * n + joint]!;
        next++;
      }
    }
  });
  const { solution, message } = solveQP(D, new Array<number>(size + 1).fill(0), A, bounds, 6);
  if (message) throw new Error(`The general solver gave up: ${message}`);
  return solution.slice(1);
}

function byContact({ maps, free, ends, r, rows }: Closing): number[] {
  const give = jointGive(maps, free, ends);
  const solver = contactSolver(give);
  if (!solver.solve(r, 0, rows, 0)) throw new Error('The contact rule did not converge.');
  return [...free].flatMap((joint, f) => [
    ...solver.openings.subarray(f * 3, f * 3 + 3),
    ...slidesFor(give, joint, solver.lambda),
  ]);
}

/** Four hundred rings of all kinds, drawn with a fixed seed. */
function* rings(): Generator<Closing> {
  const random = stream(20, 'contact against solver', 0);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const symmetric = () => between(-1, 1);
  for (let k = 0; k < 400; k++) {
    const sides = 3 + Math.floor(between(0, k % 20 === 0 ? 28 : 14));
    const slope = random.uniform();
    const sizes: RingSizes = withOpening({
      sides,
      slopeDeg: slope < 0.3 ? 0 : slope < 0.5 ? 90 : between(0, 90),
      midWidthMm: between(30, 200),
      heightMm: between(30, 300),
      thicknessMm: between(8, 30),
    });
    const maps = ringMaps(geometryOf(sizes));
    const size = [0.02, 0.1, 0.3][k % 3]!;
    const shared = size * symmetric();
    const staves = randomErrors(sides, symmetric, size, 5 * size).map((stave) => ({
      ...stave,
      bevelRight: stave.bevelRight + (shared * Math.PI) / 180,
      bevelLeft: stave.bevelLeft + (shared * Math.PI) / 180,
    }));
    const marked = Math.floor(k / 3) % 3;
    const rows = Float64Array.from({ length: 3 * sides }, (_, at) => {
      const isMiddle = at >= sides && at < 2 * sides;
      return marked === 0 || (marked === 1 && !isMiddle) ? 0 : 0.1 * symmetric();
    });
    const freeJoints = k % 4 === 0 ? Math.min(sides, 2 + Math.floor(between(0, 3))) : sides;
    const free = lastJoints(sides, freeJoints);
    yield { maps, free, ends: k % 2 ? 'free' : 'flush', r: misclosureOf(maps, faceErrors(staves)), rows };
  }
}

test('a general quadratic solver finds the same set of the joints in four hundred rings of all kinds', () => {
  let worst = 0;
  for (const closing of rings()) {
    const ours = byContact(closing);
    const theirs = byGeneralSolver(closing);
    // Turns are radians: put on the footing of the rest by the half length of the joint's edge.
    const turnScale = closing.maps.geometry.edgeLengthMm / 2;
    ours.forEach((value, k) => {
      worst = Math.max(worst, Math.abs(value - theirs[k]!) * (k % 6 === 3 ? turnScale : 1));
    });
  }
  expect(worst).toBeLessThan(1e-6);
});

test('the comparison notices a set that is off by a micrometre: dropping one joint’s hollow is found out', () => {
  const hollow = [...rings()].find(
    ({ rows, free, maps }) => rows.some((row) => row < -0.05) && free.length === maps.sides,
  )!;
  const without = { ...hollow, rows: new Float64Array(hollow.rows.length) };
  const difference = byContact(without).map((value, k) => Math.abs(value - byGeneralSolver(hollow)[k]!));
  expect(Math.max(...difference)).toBeGreaterThan(1e-3);
});
