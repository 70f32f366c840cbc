/** The contact rule finds the least-cost set that closes the ring, in every ring. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contactSolver } from '../../sim/closure/contact';
import { jointGive, lastJoints } from '../../sim/closure/joint-give';
import { misclosureOf, ringMaps } from '../../sim/closure/ring-maps';
import type { Ends } from '../../sim/project/document';
import { fillUniforms } from '../../sim/random/normal';
import { stream } from '../../sim/random/streams';
import { distanceToCone, shortfalls } from '../support/optimality';
import { anyRing, faceErrors, geometryOf, type RingSizes, randomErrors } from '../support/rings';
import { slidesFor } from '../support/slides-for';

interface Case {
  ring: RingSizes;
  freeJoints: number;
  ends: Ends;
  /** Size of the random errors, degrees; the widths take ten times as many millimetres. */
  largestDeg: number;
  marks: 'none' | 'few' | 'many';
  seed: number;
}

const anyCase: fc.Arbitrary<Case> = anyRing.chain((ring) =>
  fc.record({
    ring: fc.constant(ring),
    freeJoints: fc.oneof(fc.constant(ring.sides), fc.constantFrom(2, 3), fc.integer({ min: 2, max: ring.sides })),
    ends: fc.constantFrom<Ends>('free', 'flush'),
    largestDeg: fc.constantFrom(0.001, 0.02, 0.1, 0.5),
    marks: fc.constantFrom<Case['marks']>('none', 'few', 'many'),
    seed: fc.integer({ min: 0, max: 0xffff_ffff }),
  }),
);

function solved({ ring, freeJoints, ends, largestDeg, marks, seed }: Case) {
  const generator = stream(seed, 'contact', 0);
  const symmetric = () => 2 * generator.uniform() - 1;
  const maps = ringMaps(geometryOf(ring));
  const n = ring.sides;
  const r = misclosureOf(maps, faceErrors(randomErrors(n, symmetric, largestDeg, 10 * largestDeg)));
  const rows = new Float64Array(3 * n);
  if (marks !== 'none') {
    fillUniforms(generator, rows);
    for (let k = 0; k < rows.length; k++) {
      const isMarked = marks === 'many' || generator.uniform() < 0.1;
      rows[k] = isMarked ? 0.4 * (rows[k]! - 0.5) : 0;
    }
  }
  const solver = contactSolver(jointGive(maps, lastJoints(n, freeJoints), ends));
  const converged = solver.solve(r, 0, rows, 0);
  const left = shortfalls(solver, (joint) => slidesFor(solver.give, joint, solver.lambda), ends, r, rows);
  return { solver, converged, left, r, rows };
}

describe('pulling a ring up by contact', () => {
  test('converges to the least-cost set that closes it without overlap, in three thousand rings of every kind', () => {
    fc.assert(
      fc.property(anyCase, (kase) => {
        const { solver, converged, left } = solved(kase);
        expect(converged).toBe(true);
        // Two joints that close a wide ring pull with thousands of mm; rounding scales with that.
        const pullMm = Math.max(...solver.lambda.map(Math.abs));
        expect(left.closure).toBeLessThan(1e-8 + 4e-9 * pullMm);
        expect(left.overlap).toBeLessThan(1e-9);
        expect(left.stationarity).toBeLessThan(1e-7);
      }),
      { seed: 11, numRuns: 3000 },
    );
  });

  test('does not count as least cost when a joint is moved by a micrometre, so the check can fail', () => {
    const ring: RingSizes = { sides: 8, slopeDeg: 20, midWidthMm: 90, heightMm: 80, thicknessMm: 15 };
    const { solver, r, rows } = solved({ ring, freeJoints: 8, ends: 'free', largestDeg: 0.1, marks: 'many', seed: 3 });
    const slides = (joint: number) => slidesFor(solver.give, joint, solver.lambda);
    for (let k = 0; k < 3; k++) {
      solver.openings[k]! += 1e-3;
      const left = shortfalls(solver, slides, 'free', r, rows);
      expect(left.closure).toBeGreaterThan(1e-4);
      expect(left.stationarity).toBeGreaterThan(1e-4);
      solver.openings[k]! -= 1e-3;
    }
    expect(shortfalls(solver, slides, 'flush', r, rows).stationarity).toBeGreaterThan(1e-4);
  });

  test('gives the same whatever ring the solver closed before', () => {
    fc.assert(
      fc.property(anyCase, anyCase, (first, second) => {
        const { solver, r, rows } = solved(first);
        const openings = Float64Array.from(solver.openings);
        const other = solved({ ...first, seed: second.seed, largestDeg: second.largestDeg });
        solver.solve(other.r, 0, other.rows, 0);
        solver.solve(r, 0, rows, 0);
        expect(solver.openings).toEqual(openings);
      }),
      { seed: 12, numRuns: 200 },
    );
  });

  test('scales: twice the errors and marks open every joint twice as far', () => {
    fc.assert(
      fc.property(anyCase, (kase) => {
        const { solver, r, rows } = solved(kase);
        const once = Float64Array.from(solver.openings);
        solver.solve(
          r.map((v) => 2 * v),
          0,
          rows.map((v) => 2 * v),
          0,
        );
        const largest = Math.max(...solver.openings.map(Math.abs));
        solver.openings.forEach((v, k) => {
          expect(Math.abs(v - 2 * once[k]!)).toBeLessThan(1e-7 * (1 + largest));
        });
      }),
      { seed: 13, numRuns: 200 },
    );
  });
});

describe('the distance to a cone', () => {
  const normals = [
    [1, 1, 0],
    [1, -1, 0],
    [1, 0, 1],
    [1, 0, -1],
  ] as const;

  test('is 0 inside, and by hand outside', () => {
    expect(distanceToCone([2, 0.5, 0.5], normals)).toBeCloseTo(0, 12);
    expect(distanceToCone([0, 0, 0], normals)).toBe(0);
    expect(distanceToCone([-1, 0, 0], normals)).toBe(1);
    // nearest is half of (1, 1, 0)
    expect(distanceToCone([0, 1, 0], normals)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(distanceToCone([1, 0, 0], [])).toBe(1);
  });
});
