import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elevationOutline } from '../../../renderer/drawing/elevation-outline';
import {
  cannotBeDrawn,
  type Point,
  planOutline,
  planStave,
  regularPolygon,
  sectionOutline,
} from '../../../renderer/drawing/ring-outline';
import { jointSection, staveFace } from '../../../renderer/drawing/stave-outline';
import { ringGeometry } from '../../../sim/geometry/ring';
import { piece } from './piece';

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
const radius = ({ x, y }: Point) => Math.hypot(x, y);
/** Corners at either end of a polygon's side k. */
const side = (corners: readonly Point[], k: number): [Point, Point] => [
  corners.at(k - 1)!,
  corners[k % corners.length]!,
];
const middle = ([a, b]: [Point, Point]): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const degrees = (rad: number) => (rad * 180) / Math.PI;

/** Rings of every kind that can exist. */
const anyPiece = fc
  .record({
    sides: fc.integer({ min: 3, max: 60 }),
    slopeDeg: fc.oneof(fc.constantFrom(0, 90), fc.double({ min: 0, max: 90, noNaN: true })),
    heightMm: fc.double({ min: 10, max: 200, noNaN: true }),
    thicknessMm: fc.double({ min: 3, max: 40, noNaN: true }),
  })
  .map(({ sides, slopeDeg, ...sizes }) => piece(sides, slopeDeg, sizes));

describe('a regular polygon', () => {
  // Machinery's Handbook, table of regular polygons: side and radius of the circumscribed circle for an inscribed circle of radius 1.
  const published: [number, number, number | undefined][] = [
    [3, 3.464102, 2],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: as it is printed in the table.
    [4, 2, 1.414214],
    [5, 1.453085, 1.236068],
    [6, 1.154701, 1.154701],
    [8, 0.828427, 1.082392],
    [10, 0.649839, 1.051462],
    [12, 0.535898, 1.035276],
    [16, 0.397825, undefined],
    [20, 0.316769, 1.012465],
  ];

  it.each(published)('of %d sides has the side and the corners of the handbook', (sides, sideLength, circumradius) => {
    const corners = regularPolygon(sides, 1, 0.3);
    expect(corners).toHaveLength(sides);
    for (let k = 0; k < sides; k += 1) {
      expect(distance(...side(corners, k))).toBeCloseTo(sideLength, 6);
      expect(radius(middle(side(corners, k)))).toBeCloseTo(1, 12);
      if (circumradius !== undefined) expect(radius(corners[k]!)).toBeCloseTo(circumradius, 6);
    }
  });

  it('has its first side where it is asked for', () => {
    for (const sides of [3, 4, 7, 60]) {
      const first = middle(side(regularPolygon(sides, 5, 1.1), 0));
      expect(Math.atan2(first.y, first.x)).toBeCloseTo(1.1, 12);
    }
  });
});

describe('the plan', () => {
  it('lies flat towards the reader: opposite sides upright left and right, an odd ring on one of its sides', () => {
    for (const sides of [4, 6, 8, 12, 60]) {
      const xs = planOutline(piece(sides, 0)).outerWide.corners.map((corner) => corner.x);
      expect([Math.min(...xs), Math.max(...xs)]).toEqual([expect.closeTo(-300, 9), expect.closeTo(300, 9)]);
    }
    for (const sides of [3, 5, 7]) {
      const ys = planOutline(piece(sides, 0)).outerWide.corners.map((corner) => corner.y);
      expect(Math.max(...ys)).toBeCloseTo(300, 9);
      expect(ys.filter((y) => Math.abs(y - 300) < 1e-9)).toHaveLength(2);
    }
  });

  it('shows the sizes that the engine reckons with', () => {
    fc.assert(
      fc.property(anyPiece, (ring) => {
        fc.pre(cannotBeDrawn(ring) === undefined);
        const plan = planOutline(ring);
        const geometry = ringGeometry(ring);
        expect(2 * plan.outerWide.radiusMm).toBeCloseTo(geometry.outsideFlatsMm, 8);
        expect(2 * radius(plan.outerWide.corners[0]!)).toBeCloseTo(geometry.outsideCornersMm, 8);
        expect(distance(...side(plan.outerWide.corners, 1))).toBeCloseTo(geometry.staveWidthMm, 8);
        expect(2 * plan.innerWide.radiusMm).toBeCloseTo(geometry.clearOpeningWideMm, 8);
        expect(2 * plan.innerNarrow.radiusMm).toBeCloseTo(geometry.clearOpeningNarrowMm, 8);
      }),
    );
  });

  it('is closed by its staves: side by side they meet along the joints, corner on corner', () => {
    for (const sides of [3, 8, 60]) {
      const corners = planStave(sides, 280, 300);
      const turned = ({ x, y }: Point, angle: number): Point => ({
        x: x * Math.cos(angle) - y * Math.sin(angle),
        y: x * Math.sin(angle) + y * Math.cos(angle),
      });
      const [innerStart, outerStart, outerEnd, innerEnd] = corners as [Point, Point, Point, Point];
      const next = (2 * Math.PI) / sides;
      expect(distance(outerEnd, turned(outerStart, next))).toBeLessThan(1e-9);
      expect(distance(innerEnd, turned(innerStart, next))).toBeLessThan(1e-9);
    }
  });
});

describe('the section', () => {
  it('is the stave itself: height by thickness, square, leaning inward by the slope', () => {
    fc.assert(
      fc.property(anyPiece, (ring) => {
        const { wideOuter, wideInner, narrowOuter, narrowInner } = sectionOutline(ring);
        expect(distance(wideOuter, narrowOuter)).toBeCloseTo(ring.heightMm, 9);
        expect(distance(wideInner, narrowInner)).toBeCloseTo(ring.heightMm, 9);
        expect(distance(wideOuter, wideInner)).toBeCloseTo(ring.thicknessMm, 9);
        expect(distance(wideOuter, narrowInner)).toBeCloseTo(Math.hypot(ring.heightMm, ring.thicknessMm), 9);
        const lean = Math.atan2(wideOuter.x - narrowOuter.x, narrowOuter.y - wideOuter.y);
        expect(degrees(lean)).toBeCloseTo(ring.slopeDeg, 9);
        expect(wideInner.x).toBeLessThanOrEqual(wideOuter.x);
      }),
    );
  });

  it('of a flat frame lies level: no side of the drawing is off by rounding', () => {
    const { wideOuter, wideInner, narrowOuter } = sectionOutline(piece(4, 90));
    expect(wideInner.x).toBe(wideOuter.x);
    expect(narrowOuter.y).toBe(0);
  });
});

describe('the view from the side', () => {
  it.each([
    [3, 0],
    [4, 0],
    [5, 1],
    [6, 0],
    [10, 1],
    [8, 1],
    [12, 2],
    [60, 14],
  ])('of %d staves shows %d joints between its left edge and the axis', (sides, joints) => {
    const { joints: drawn, outside } = elevationOutline(piece(sides, 15));
    const leftmost = Math.min(...outside.map((point) => point.x));
    const inside = drawn.filter((joint) => joint[1]!.x > leftmost + 1e-9);
    expect(inside).toHaveLength(joints);
    for (const joint of inside) expect(joint[1]!.x).toBeLessThan(0);
  });

  it('reaches as far left as the ring does: to a side of an even ring, to a corner of an odd one', () => {
    const leftmost = (sides: number) => Math.min(...elevationOutline(piece(sides, 0)).outside.map((point) => point.x));
    expect(leftmost(8)).toBeCloseTo(-300, 9);
    // Machinery's Handbook: the corners of a triangle lie at twice the radius of its inscribed circle.
    expect(leftmost(3)).toBeCloseTo(-600, 9);
  });
});

describe('one stave', () => {
  it('tapers by the swing of the gauge', () => {
    fc.assert(
      fc.property(anyPiece, (ring) => {
        const { wideRight, narrowRight, widths } = staveFace(ring);
        const swing = Math.atan2(wideRight.x - narrowRight.x, ring.heightMm);
        expect(degrees(swing)).toBeCloseTo(ringGeometry(ring).crosscutDeg, 8);
        expect(widths.middle).toBeCloseTo((widths.wide + widths.narrow) / 2, 9);
      }),
    );
  });

  // Tilt and swing of mitre-saw manuals' crown-moulding table: four sides, 38° from upright, 33.86° and 31.62°.
  it('has the published settings of a crown moulding at 38°', () => {
    const ring = piece(4, 38);
    const { inner } = jointSection(ring);
    const { wideRight, narrowRight } = staveFace(ring);
    expect(degrees(Math.atan2(-inner.x, -inner.y))).toBeCloseTo(33.86, 2);
    expect(degrees(Math.atan2(wideRight.x - narrowRight.x, ring.heightMm))).toBeCloseTo(31.62, 2);
  });

  it('has a joint as long as the slanting cut through its thickness', () => {
    fc.assert(
      fc.property(anyPiece, (ring) => {
        const { outer, inner, jointLengthMm } = jointSection(ring);
        expect(distance(outer, inner)).toBeCloseTo(jointLengthMm, 9);
        expect(outer.y - inner.y).toBe(ring.thicknessMm);
      }),
    );
  });
});

describe('a ring that cannot be', () => {
  it('is told from one that can, with a sentence', () => {
    expect(cannotBeDrawn(piece(8, 15))).toBeUndefined();
    expect(cannotBeDrawn(piece(2, 0))).toBe('No drawing: 2 sides make no ring. Give a whole number from 3 on.');
    expect(cannotBeDrawn(piece(4.5, 0))).toMatch(/^No drawing: 4.5 sides/);
    expect(cannotBeDrawn(piece(8, 0, { thicknessMm: 0 }))).toMatch(/must all be above 0/);
    expect(cannotBeDrawn(piece(8, 0, { heightMm: Number.NaN }))).toMatch(/must all be above 0/);
    expect(cannotBeDrawn(piece(8, 90, { heightMm: 301 }))).toMatch(/the staves meet before the ring closes/);
    expect(cannotBeDrawn(piece(8, 90, { heightMm: 299 }))).toBeUndefined();
  });
});
