/** How rings with known errors close, against an independent program (derived). Ends flush and pull-up 0 unless said. */
import { describe, expect, test } from 'vitest';
import { ringMaps } from '../../sim/closure/ring-maps';
import type { Ends } from '../../sim/project/document';
import { closeRing } from '../support/close-ring';
import { type JointGaps, ringFacts } from '../support/ring-facts';
import { geometryOf, type RingSizes, type StaveErrorsDeg, sameForAll, staveErrors } from '../support/rings';

const bevels = (deg: number): Partial<StaveErrorsDeg> => ({ bevelRightDeg: deg, bevelLeftDeg: deg });
const crosscuts = (deg: number, leftDeg = deg): Partial<StaveErrorsDeg> => ({
  crosscutRightDeg: deg,
  crosscutLeftDeg: leftDeg,
});

const eight: RingSizes = { sides: 8, slopeDeg: 0, midWidthMm: 100, heightMm: 120, thicknessMm: 18 };
const twelve: RingSizes = { sides: 12, slopeDeg: 0, midWidthMm: 70, heightMm: 400, thicknessMm: 15 };
const six: RingSizes = { sides: 6, slopeDeg: 0, midWidthMm: 120, heightMm: 150, thicknessMm: 16 };
const frame: RingSizes = { sides: 4, slopeDeg: 90, midWidthMm: 300, heightMm: 40, thicknessMm: 20 };

const last = (gaps: readonly number[], count: number) => gaps.slice(-count);

function expectGaps(gaps: readonly number[], printed: readonly number[]): void {
  printed.forEach((gap, k) => {
    // printed to four decimals
    expect(Math.abs(gaps[k]! - gap), `joint ${k} of ${gaps}, wanted ${printed}`).toBeLessThan(0.0000501);
  });
}

interface SharedError {
  ring: RingSizes;
  errors: Partial<StaveErrorsDeg>;
  mouth: number;
  allAtOnce: number;
  threeOuter: number[];
  threeInner?: number[];
  twoOuter?: number[];
}

const SHARED: Record<string, SharedError> = {
  'eight sides, all bevels 0.1° short': {
    ring: eight,
    errors: bevels(-0.1),
    mouth: 3.6486,
    allAtOnce: 0.068,
    threeOuter: [0.6352, 0, 0.6352],
    threeInner: [0, 0.7264, 0],
    twoOuter: [1.5771, 1.5771],
  },
  'twelve tall sides, all bevels 0.1° short': {
    ring: twelve,
    errors: bevels(-0.1),
    mouth: 5.6645,
    allAtOnce: 0.0542,
    threeOuter: [1.3241, 0, 1.3241],
    threeInner: [0.0492, 1.8992, 0.0492],
    twoOuter: [2.6534, 2.6534],
  },
  'six sides, all bevels 0.1° short': {
    ring: six,
    errors: bevels(-0.1),
    mouth: 2.5133,
    allAtOnce: 0.0645,
    threeOuter: [0.32, 0, 0.32],
    threeInner: [0, 0.2531, 0],
    twoOuter: [0.9667, 0.9667],
  },
  'a four-sided frame, all crosscuts 0.1° short': {
    ring: frame,
    errors: crosscuts(-0.1),
    mouth: 2.9619,
    allAtOnce: 0.1975,
    threeOuter: [0.3759, 0.0666, 0.3759],
  },
};

describe.each(Object.entries(SHARED))(
  '%s',
  (_, { ring, errors, mouth, allAtOnce, threeOuter, threeInner, twoOuter }) => {
    const maps = ringMaps(geometryOf(ring));
    const staves = sameForAll(ring.sides, errors);

    test('stands open at the mouth as an independent program says', () => {
      expectGaps([closeRing(maps, staves, { ends: 'flush' }, 'contact').mouthOuterMm], [mouth]);
    });

    test('opens every joint alike when pulled up all at once, by touch and by contact', () => {
      for (const rule of ['touch', 'contact'] as const) {
        const { outerMm, innerMm } = closeRing(maps, staves, { ends: 'flush' }, rule);
        // a frame's crosscut errors open outer and inner edge of the narrow end alike; bevels the outside alone
        expectGaps(outerMm, Array(ring.sides).fill(allAtOnce));
        expectGaps(innerMm, Array(ring.sides).fill(ring.slopeDeg === 90 ? allAtOnce : 0));
      }
    });

    test('glued one by one leaves it all to the last three joints, or two', () => {
      const three = closeRing(maps, staves, { by: 'oneByOne', freeJoints: 3, ends: 'flush' }, 'contact');
      expectGaps(last(three.outerMm, 3), threeOuter);
      if (threeInner) expectGaps(last(three.innerMm, 3), threeInner);
      expect(Math.max(...three.outerMm.slice(0, -3), ...three.innerMm.slice(0, -3))).toBe(0);
      if (!twoOuter) return;
      const two = closeRing(maps, staves, { by: 'oneByOne', freeJoints: 2, ends: 'flush' }, 'contact');
      expectGaps(last(two.outerMm, 2), twoOuter);
    });
  },
);

describe('an upright ring', () => {
  const maps = ringMaps(geometryOf(eight));

  test('closes tight on staves that all taper alike: it only becomes a cone', () => {
    const tapers = sameForAll(8, crosscuts(0.1));
    expectGaps([closeRing(maps, tapers, { ends: 'flush' }, 'contact').mouthOuterMm], [0]);
    for (const assembly of [{ by: 'allAtOnce' }, { by: 'oneByOne', freeJoints: 3 }] as const) {
      const { outerMm, innerMm } = closeRing(maps, tapers, { ...assembly, ends: 'flush' }, 'contact');
      expectGaps([...outerMm, ...innerMm], Array(16).fill(0));
    }
  });

  test('leans on staves that are parallelograms, and opens only when it is kept from leaning', () => {
    const leaning = sameForAll(8, crosscuts(0.1, -0.1));
    const all = closeRing(maps, leaning, { ends: 'flush' }, 'contact');
    expectGaps([...all.outerMm, ...all.innerMm], Array(16).fill(0));
    const oneByOne = (ends: Ends) => closeRing(maps, leaning, { by: 'oneByOne', freeJoints: 3, ends }, 'contact');
    expectGaps(last(oneByOne('flush').outerMm, 3), [0.2841, 0.073, 0.2841]);
    expectGaps([Math.max(...oneByOne('free').outerMm)], [0.0048]);
  });

  test('opens outside on bevels that are too small and inside on bevels that are too large', () => {
    const small = closeRing(maps, sameForAll(8, bevels(-0.1)), { ends: 'flush' }, 'contact');
    const large = closeRing(maps, sameForAll(8, bevels(0.1)), { ends: 'flush' }, 'contact');
    expect(large.innerMm.map((gap) => gap.toFixed(9))).toEqual(small.outerMm.map((gap) => gap.toFixed(9)));
    expectGaps(large.outerMm, Array(8).fill(0));
    expect(large.mouthOuterMm).toBeCloseTo(-small.mouthOuterMm, 9);
  });
});

describe('rings with errors of every kind and marks in the faces', () => {
  const cases = ringFacts.flatMap((ring) =>
    ring.results.map((result) => ({
      name: `${ring.sides} sides at ${ring.slopeDeg}°, ends ${result.ends}`,
      ring,
      result,
    })),
  );

  test.each(cases)('$name, close as an independent program says', ({ ring, result }) => {
    const maps = ringMaps(geometryOf({ ...ring, midWidthMm: ring.staveWidthMidMm }));
    const errors = ring.errors.map(staveErrors);
    const rows = Float64Array.from(
      (['bottom', 'middle', 'top'] as const).flatMap((row) => ring.jointRowOffsetMm.map((joint) => joint[row])),
    );
    const near = (gaps: JointGaps, printed: JointGaps, what: string) => {
      for (const side of ['outerMm', 'innerMm'] as const) {
        gaps[side].forEach((gap, j) => {
          const off = Math.abs(gap - printed[side][j]!);
          expect(off, `${what}, ${side}, joint ${j}: ${gap}, wanted ${printed[side][j]}`).toBeLessThan(0.0002);
        });
      }
    };
    const { ends } = result;
    const touch = closeRing(maps, errors, { ends }, 'touch', rows);
    expect(Math.abs(touch.mouthOuterMm - result.mouthOuterMm)).toBeLessThan(0.0002);
    near(touch, result.allAtOnceTouch, 'touch');
    near(closeRing(maps, errors, { ends }, 'contact', rows), result.allAtOnceContact, 'contact');
    const oneByOne = (freeJoints: number) =>
      closeRing(maps, errors, { by: 'oneByOne', freeJoints, ends }, 'contact', rows);
    near(oneByOne(3), result.oneByOne3Contact, 'three free');
    near(oneByOne(2), result.oneByOne2Contact, 'two free');
  });

  test('would not agree with a tenth of the first error taken away, so this check can fail', () => {
    const ring = ringFacts[0]!;
    const maps = ringMaps(geometryOf({ ...ring, midWidthMm: ring.staveWidthMidMm }));
    const errors = ring.errors.map((stave, i) =>
      staveErrors(i === 0 ? { ...stave, bevelRightDeg: 0.9 * stave.bevelRightDeg } : stave),
    );
    const { mouthOuterMm } = closeRing(maps, errors, { ends: 'flush' }, 'touch');
    expect(Math.abs(mouthOuterMm - ring.results[0]!.mouthOuterMm)).toBeGreaterThan(0.002);
  });
});
