import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gapOutline, mostExaggeration, suitedExaggeration } from '../../../renderer/drawing/gap-outline';
import type { Point } from '../../../renderer/drawing/ring-outline';
import type { JointOpening } from '../../../sim/run/single-ring';
import { piece } from './piece';

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** Rings of every kind with a gap for each side of each joint. */
const anyRing = fc
  .record({ sides: fc.integer({ min: 3, max: 60 }), slopeDeg: fc.constantFrom(0, 12, 45, 90) })
  .chain(({ sides, slopeDeg }) =>
    fc.record({
      piece: fc.constant(piece(sides, slopeDeg)),
      joints: fc.array(
        fc.record({
          outerMm: fc.double({ min: 0, max: 2, noNaN: true }),
          innerMm: fc.double({ min: 0, max: 2, noNaN: true }),
        }),
        { minLength: sides, maxLength: sides },
      ),
    }),
  );

const TIGHT: JointOpening = { outerMm: 0, innerMm: 0 };

describe('the plan of a ring with its gaps', () => {
  it('leaves exactly the exaggerated gap between the corners of two neighbours, outside and inside', () => {
    fc.assert(
      fc.property(anyRing, fc.double({ min: 0.1, max: 3, noNaN: true }), ({ piece, joints }, wanted) => {
        const { exaggeration, staves } = gapOutline(piece, joints, wanted);
        const isFlat = piece.slopeDeg === 90;
        staves.forEach(({ whole }, i) => {
          const next = staves[(i + 1) % piece.sides]!.whole;
          const { outerMm, innerMm } = joints[i]!;
          const inner = whole.length / 2 - 1;
          expect(distance(whole[0]!, next.at(-1)!)).toBeCloseTo(exaggeration * outerMm, 8);
          expect(distance(whole[inner]!, next[inner + 1]!)).toBeCloseTo(exaggeration * (isFlat ? outerMm : innerMm), 8);
        });
      }),
    );
  });

  it('closes without a gap to the corners of the nominal ring', () => {
    for (const sides of [3, 4, 5, 8, 12, 60]) {
      const { plan, staves, joints } = gapOutline(piece(sides, 0), Array(sides).fill(TIGHT), 100);
      const radius = plan.outerWide.radiusMm / Math.cos(Math.PI / sides);
      staves.forEach(({ whole }, i) => {
        expect(distance(whole[0]!, joints[i]!.outer)).toBeLessThan(1e-9);
        expect(Math.hypot(whole[0]!.x, whole[0]!.y)).toBeCloseTo(radius, 9);
      });
      for (const corner of plan.outerWide.corners) {
        expect(Math.min(...joints.map(({ outer }) => distance(outer, corner)))).toBeLessThan(1e-9);
      }
    }
  });

  it('goes around counter-clockwise as seen from above: with y down the sheet the angle falls', () => {
    const { joints } = gapOutline(piece(8, 0), Array(8).fill(TIGHT), 1);
    const [first, second] = joints;
    expect(first!.away.x * second!.away.y - first!.away.y * second!.away.x).toBeLessThan(0);
    expect(first!.away.x).toBeGreaterThan(0);
    expect(first!.away.y).toBeLessThan(0);
  });

  it('never lets a stave vanish, and says how much wider the gaps are then', () => {
    fc.assert(
      fc.property(anyRing, ({ piece, joints }) => {
        const { exaggeration, staves, plan } = gapOutline(piece, joints, 1e6);
        const narrowest = 2 * plan.innerNarrow.radiusMm * Math.tan(Math.PI / piece.sides);
        if (exaggeration < 1e6) expect(exaggeration).toBeCloseTo(mostExaggeration(piece, joints), 9);
        for (const { whole } of staves) {
          const inner = whole.length / 2 - 1;
          expect(distance(whole[inner]!, whole[inner + 1]!)).toBeGreaterThan(0.4 * narrowest - 1e-9);
        }
      }),
    );
  });
});

describe('the exaggeration that suits a ring', () => {
  it('is round, and makes the gap a good part of a stave but never more than there is', () => {
    for (const sides of [4, 8, 12, 60]) {
      for (const gapMm of [0.05, 0.15, 0.5, 2]) {
        const suited = suitedExaggeration(piece(sides, 0), gapMm);
        const width = 600 * Math.tan(Math.PI / sides);
        expect([1, 2, 5]).toContain(Number((suited / 10 ** Math.floor(Math.log10(suited))).toFixed(6)));
        expect(suited * gapMm).toBeLessThanOrEqual(0.22 * width + 1e-9);
        expect(suited * gapMm).toBeGreaterThan(0.05 * width);
      }
    }
  });
});
