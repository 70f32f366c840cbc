/** Which joints give, which stay hard, and when a ring is said not to close. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inMisclosure, inverse6, jointGive, lastJoints, stepRows } from '../../../sim/closure/joint-give';
import { freeJoints, ringCloser } from '../../../sim/closure/ring-closer';
import { along, misclosureOf, ringMaps } from '../../../sim/closure/ring-maps';
import { DEFAULT_ASSEMBLY } from '../../../sim/project/defaults';
import type { Assembly } from '../../../sim/project/document';
import { stream } from '../../../sim/random/streams';
import { closeRing } from '../../support/close-ring';
import { anyRing, faceErrors, geometryOf, type RingSizes, randomErrors, sameForAll } from '../../support/rings';
import { slidesFor } from '../../support/slides-for';

const eight: RingSizes = { sides: 8, slopeDeg: 0, midWidthMm: 100, heightMm: 120, thicknessMm: 18 };
const maps = ringMaps(geometryOf(eight));
const assembly = (changes: Partial<Assembly>): Assembly => ({ ...DEFAULT_ASSEMBLY, ...changes });
const perfect = sameForAll(8, {});
const bevels = (deg: number) => sameForAll(8, { bevelRightDeg: deg, bevelLeftDeg: deg });

/** Row offsets: bottoms, middles, tops. */
function rowsWith(marks: [joint: number, row: 0 | 1 | 2, mm: number][]): Float64Array {
  const rows = new Float64Array(24);
  for (const [joint, row, mm] of marks) rows[row * 8 + joint] = mm;
  return rows;
}

describe('the joints that give', () => {
  test('are all of them, the last few, or the two between two halves', () => {
    expect([...freeJoints(assembly({ by: 'allAtOnce' }), 5)]).toEqual([0, 1, 2, 3, 4]);
    expect([...freeJoints(assembly({ by: 'oneByOne', freeJoints: 3 }), 8)]).toEqual([5, 6, 7]);
    expect([...freeJoints(assembly({ by: 'oneByOne', freeJoints: 2 }), 8)]).toEqual([6, 7]);
    expect([...freeJoints(assembly({ by: 'twoHalves' }), 8)]).toEqual([3, 7]);
  });
});

describe('a perfect ring', () => {
  test.each(['allAtOnce', 'oneByOne', 'twoHalves'] as const)('closes without a gap, %s', (by) => {
    for (const rule of ['touch', 'contact'] as const) {
      const closed = closeRing(maps, perfect, { by }, rule);
      expect(closed.closes).toBe(true);
      expect(Math.max(...closed.outerMm, ...closed.innerMm)).toBe(0);
    }
  });
});

describe('a hard joint', () => {
  test('stands open by its hollows alone, less what lies proud, on both sides alike', () => {
    const rows = rowsWith([
      [0, 1, 0.12],
      [1, 0, 0.09],
      [1, 2, -0.05],
      [2, 0, 0.2],
      [2, 1, 0.2],
      [2, 2, 0.2],
    ]);
    const closed = closeRing(maps, bevels(-0.01), { by: 'oneByOne', freeJoints: 3 }, 'contact', rows);
    expect(closed.outerMm[0]).toBeCloseTo(0.12, 12);
    expect(closed.innerMm[0]).toBeCloseTo(0.12, 12);
    expect(closed.outerMm[1]).toBeCloseTo(0.14, 12);
    expect(closed.outerMm[2]).toBeCloseTo(0, 12);
    expect(closed.outerMm[4]).toBe(0);
  });
});

describe('two halves', () => {
  test('open at the two closing joints by what truing left, whatever the staves, and always close', () => {
    const closer = ringCloser(maps, assembly({ by: 'twoHalves' }), 'contact');
    const r = misclosureOf(maps, faceErrors(bevels(2)));
    // outer bottom, outer top, inner bottom, inner top of joint 3, then of joint 7
    const corners = Float64Array.of(0.03, 0.05, -0.01, 0.02, 0, 0, 0.04, -0.06);
    const rows = rowsWith([
      [2, 2, 0.07],
      [3, 1, 0.5],
    ]);
    expect(closer.close(r, 0, rows, 0, corners, 0)).toBe(true);
    expect(closer.outer[3]).toBeCloseTo(0.06, 12);
    expect(closer.inner[3]).toBeCloseTo(0.03, 12);
    expect(closer.outer[7]).toBeCloseTo(0.06, 12);
    expect(closer.inner[7]).toBeCloseTo(0.1, 12);
    expect(closer.outer[2]).toBeCloseTo(0.07, 12);
    expect(closer.outer[0]).toBe(0);
  });
});

describe('a ring does not close', () => {
  test('with an opening over 2 mm, and does with one just under', () => {
    // all at once each joint opens by 2·L·δ, with L = 18 / cos 22.5°
    const limitDeg = ((2 / (2 * (18 / Math.cos(Math.PI / 8)))) * 180) / Math.PI;
    for (const rule of ['touch', 'contact'] as const) {
      expect(closeRing(maps, bevels(-0.999 * limitDeg), { by: 'allAtOnce', ends: 'flush' }, rule).closes).toBe(true);
      expect(closeRing(maps, bevels(-1.001 * limitDeg), { by: 'allAtOnce', ends: 'flush' }, rule).closes).toBe(false);
    }
  });

  test('with a hollow over 2 mm in a hard joint', () => {
    const open = (mm: number) => closeRing(maps, perfect, { by: 'oneByOne' }, 'contact', rowsWith([[0, 1, mm]])).closes;
    expect(open(1.99)).toBe(true);
    expect(open(2.01)).toBe(false);
  });

  test('glued one by one when it misses by more than 5°, though no joint opens that far', () => {
    // twenty-four thin faces share it, and all twelve joints give
    const thin = ringMaps(geometryOf({ sides: 12, slopeDeg: 0, midWidthMm: 40, heightMm: 30, thicknessMm: 4 }));
    const missing = (deg: number) => sameForAll(12, { bevelRightDeg: deg / 24, bevelLeftDeg: deg / 24 });
    const closed = (deg: number) => closeRing(thin, missing(deg), { by: 'oneByOne', freeJoints: 12 }, 'contact');
    expect(Math.max(...closed(5.1).outerMm, ...closed(5.1).innerMm)).toBeLessThan(2);
    expect(closed(4.9).closes).toBe(true);
    expect(closed(5.1).closes).toBe(false);
    expect(closeRing(thin, missing(5.1), { by: 'allAtOnce' }, 'contact').closes).toBe(true);
  });
});

describe('the rules', () => {
  test('are kept all at once, but one by one is always by contact', () => {
    expect(ringCloser(maps, assembly({ by: 'oneByOne' }), 'touch').rule).toBe('contact');
    expect(ringCloser(maps, assembly({ by: 'allAtOnce' }), 'touch').rule).toBe('touch');
    expect(ringCloser(maps, assembly({ by: 'allAtOnce' }), 'contact').rule).toBe('contact');
    const errors = randomErrors(8, symmetricFrom(5), 0.1, 0.1);
    const by = { by: 'oneByOne', freeJoints: 8 } as const;
    expect(closeRing(maps, errors, by, 'touch')).toEqual(closeRing(maps, errors, by, 'contact'));
  });

  test('of touch: the widest corner is what the linear map leaves between the joint and its first point of touch', () => {
    fc.assert(
      fc.property(anyRing, fc.integer({ min: 0, max: 2 ** 32 - 1 }), (ring, seed) => {
        const symmetric = symmetricFrom(seed);
        const ringsMaps = ringMaps(geometryOf(ring));
        const n = ring.sides;
        const errors = randomErrors(n, symmetric, 0.1, 0.2);
        const rows = Float64Array.from({ length: 3 * n }, () => 0.1 * symmetric());
        const closed = closeRing(ringsMaps, errors, { ends: 'flush' }, 'touch', rows);
        const give = jointGive(ringsMaps, lastJoints(n, n), 'flush');
        const r = misclosureOf(ringsMaps, faceErrors(errors));
        for (let j = 0; j < n; j++) {
          const [b, c] = [1, 2].map((k) => along(give.linear.subarray((3 * j + k) * 6, (3 * j + k) * 6 + 6), r));
          const openings = [1, -1].map((side) => [-1, 0, 1].map((row, k) => side * b! + row * c! + rows[k * n + j]!));
          const least = Math.min(...openings.flat());
          expect(closed.outerMm[j]).toBeCloseTo(Math.max(...openings[0]!) - least, 9);
          expect(closed.innerMm[j]).toBeCloseTo(Math.max(...openings[1]!) - least, 9);
        }
      }),
      { seed: 22, numRuns: 150 },
    );
  });

  test('agree for an error that all bevels of an upright ring share', () => {
    fc.assert(
      fc.property(anyRing, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (ring, deg) => {
        const own = ringMaps(geometryOf({ ...ring, slopeDeg: 0 }));
        const shared = sameForAll(ring.sides, { bevelRightDeg: deg, bevelLeftDeg: deg });
        const touch = closeRing(own, shared, { ends: 'flush' }, 'touch');
        const contact = closeRing(own, shared, { ends: 'flush' }, 'contact');
        for (let j = 0; j < ring.sides; j++) {
          expect(touch.outerMm[j]).toBeCloseTo(contact.outerMm[j]!, 7);
          expect(touch.innerMm[j]).toBeCloseTo(contact.innerMm[j]!, 7);
        }
      }),
      { seed: 23, numRuns: 150 },
    );
  });
});

describe('least-cost give', () => {
  test('without the no-overlap rule closes the ring: openings and slides together undo the misclosure', () => {
    fc.assert(
      fc.property(anyRing, fc.integer({ min: 0, max: 2 ** 32 - 1 }), fc.boolean(), (ring, seed, few) => {
        const own = ringMaps(geometryOf(ring));
        const symmetric = symmetricFrom(seed);
        const give = jointGive(own, lastJoints(ring.sides, few ? 3 : ring.sides), 'free');
        const r = Float64Array.from({ length: 6 }, () => symmetric());
        const lambda = Float64Array.from({ length: 6 }, (_, i) =>
          along(give.linearInverse.subarray(6 * i, 6 * i + 6), r),
        );
        const left = Float64Array.from(r);
        const steps = stepRows(give);
        const stepsOfMisclosure = inMisclosure(steps, give.linearInverse);
        give.free.forEach((joint, f) => {
          const slides = slidesFor(give, joint, lambda);
          expect(along(steps.subarray(6 * f, 6 * f + 6), lambda)).toBeCloseTo(slides[2], 9);
          expect(along(stepsOfMisclosure.subarray(6 * f, 6 * f + 6), r)).toBeCloseTo(slides[2], 9);
          for (let k = 0; k < 3; k++) {
            const opening = along(give.linear.subarray((3 * f + k) * 6, (3 * f + k) * 6 + 6), r);
            for (let i = 0; i < 6; i++) {
              left[i]! += own.openingColumns[joint * 18 + 6 * k + i]! * opening;
              left[i]! += own.slideColumns[joint * 18 + 6 * k + i]! * slides[k]!;
            }
          }
        });
        expect(Math.max(...left.map(Math.abs))).toBeLessThan(1e-7);
      }),
      { seed: 24, numRuns: 150 },
    );
  });

  test('needs joints that can close the ring at all', () => {
    expect(() => inverse6(new Float64Array(36))).toThrow('cannot close the ring');
  });
});

function symmetricFrom(seed: number): () => number {
  const generator = stream(seed, 'test', 0);
  return () => 2 * generator.uniform() - 1;
}

describe('a stave squeezed out of the ring', () => {
  /** Bevels all too large: no joint opens, the last loose staves move outwards instead. */
  const wide = ringMaps(geometryOf({ sides: 24, slopeDeg: 0, midWidthMm: 40, heightMm: 100, thicknessMm: 15 }));
  const closing = (bevelDeg: number) => {
    const closer = ringCloser(wide, { ...DEFAULT_ASSEMBLY, by: 'oneByOne', freeJoints: 3 }, 'contact');
    const r = misclosureOf(wide, faceErrors(sameForAll(24, { bevelRightDeg: bevelDeg, bevelLeftDeg: bevelDeg })));
    const closes = closer.close(r, 0, new Float64Array(72), 0, new Float64Array(8), 0);
    return { closes, step: closer.stepMm(r), gap: Math.max(...closer.outer, ...closer.inner) };
  };

  test('does not count as closed, however small the gaps that remain', () => {
    const { closes, step, gap } = closing(0.1);
    expect(gap).toBeLessThan(2);
    expect(step).toBeGreaterThan(2);
    expect(closes).toBe(false);
  });

  test('is let pass while it stands out by less than what an opening may be', () => {
    const { closes, step } = closing(0.002);
    expect(step).toBeLessThan(2);
    expect(closes).toBe(true);
  });
});
