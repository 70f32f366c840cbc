/** Sizes and saw settings against tables that stand outside the program. Angles in degrees, slope from upright. */
import { describe, expect, test } from 'vitest';
import { pitchMm, ringGeometry, stavesPerStrip, stripNeededMm } from '../../sim/geometry/ring';
import { DEFAULT_BLADE, DEFAULT_STOCK } from '../../sim/project/defaults';
import type { Piece } from '../../sim/project/document';
import { geometryOf } from '../support/rings';

const upright = (sides: number, flatsMm: number): Piece => ({
  sides,
  slopeDeg: 0,
  grain: 'alongRing',
  size: { by: 'outsideFlats', mm: flatsMm },
  heightMm: 100,
  thicknessMm: 0.01 * flatsMm,
  showFace: 'outside',
});

describe('regular polygons', () => {
  // published: Machinery's Handbook, table of regular polygons (inscribed and circumscribed radii)
  test.each([
    [3, 3.464102],
    [4, 2.0],
    [5, 1.453085],
    [6, 1.154701],
    [8, 0.828427],
    [10, 0.649839],
    [12, 0.535898],
    [16, 0.397825],
    [20, 0.316769],
  ])('with %i sides have sides of %f inscribed radii', (sides, ratio) => {
    expect(ringGeometry(upright(sides, 2)).staveWidthMm).toBeCloseTo(ratio, 6);
  });

  // published: Machinery's Handbook, the same table
  test.each([
    [3, 2.0],
    [4, Math.SQRT2],
    [5, 1.236068],
    [6, 1.154701],
    [8, 1.082392],
    [10, 1.051462],
    [12, 1.035276],
    [20, 1.012465],
  ])('with %i sides have corners at %f inscribed radii', (sides, ratio) => {
    const { outsideCornersMm, outsideFlatsMm } = ringGeometry(upright(sides, 2));
    expect(outsideCornersMm / outsideFlatsMm).toBeCloseTo(ratio, 6);
  });

  // published: steel-square figures of old carpentry books, to the nearest 32nd of an inch
  test.each([
    [8, 4 + 31 / 32],
    [6, 6 + 15 / 16],
  ])('with %i sides are laid out by %f against 12 on the steel square', (sides, against) => {
    const figure =
      12 * Math.tan(geometryOf({ sides, slopeDeg: 90, midWidthMm: 100, heightMm: 10, thicknessMm: 5 }).crosscutRad);
    expect(Math.abs(figure - against)).toBeLessThan(1 / 64);
  });
});

/** Tilt and swing for 4, 6, 8 and 12 sides. */
const SETTINGS: [slope: number, ...pairs: [number, number][]][] = [
  [0, [45, 0], [30, 0], [22.5, 0], [15, 0]],
  [5, [44.78, 4.98], [29.87, 2.88], [22.41, 2.07], [14.94, 1.34]],
  [10, [44.14, 9.85], [29.5, 5.73], [22.14, 4.11], [14.77, 2.66]],
  [20, [41.64, 18.88], [28.02, 11.17], [21.08, 8.06], [14.08, 5.24]],
  [30, [37.76, 26.57], [25.66, 16.1], [19.35, 11.7], [12.95, 7.63]],
  [60, [20.7, 40.89], [14.48, 26.57], [11.03, 19.73], [7.44, 13.06]],
  [90, [0, 45], [0, 30], [0, 22.5], [0, 15]],
];

const settings = (sides: number, slopeDeg: number) =>
  geometryOf({ sides, slopeDeg, midWidthMm: 100, heightMm: 20, thicknessMm: 5 });

describe('saw settings of splayed work', () => {
  // derived: sin T = cos s · sin(180°/N), tan G = sin s · tan(180°/N), worked out by an independent program
  test.each(SETTINGS)(
    'at %f° of slope agree with the table for four, six, eight and twelve sides',
    (slope, ...pairs) => {
      for (const [k, sides] of [4, 6, 8, 12].entries()) {
        const { bevelDeg, crosscutDeg } = settings(sides, slope);
        expect(Math.abs(bevelDeg - pairs[k]![0]), `tilt, ${sides} sides`).toBeLessThanOrEqual(0.00501);
        expect(Math.abs(crosscutDeg - pairs[k]![1]), `swing, ${sides} sides`).toBeLessThanOrEqual(0.00501);
      }
    },
  );

  // published: the crown-moulding table of mitre-saw manuals, which lays the moulding flat on the table
  test.each([
    [38, 33.86, 31.62],
    [45, 30.0, 35.26],
  ])('for a square corner at %f° of slope are those of the crown-moulding tables', (slope, tilt, swing) => {
    const { bevelDeg, crosscutDeg } = settings(4, slope);
    expect(Math.abs(bevelDeg - tilt)).toBeLessThanOrEqual(0.00501);
    expect(Math.abs(crosscutDeg - swing)).toBeLessThanOrEqual(0.00501);
  });

  // derived: worked out by an independent program
  test.each([
    [6, 15, 28.8791, 8.4988],
    [8, 30, 19.3546, 11.7009],
    [5, 60, 17.0911, 32.1783],
    [4, 90, 0, 45],
  ])('for %i sides at %f° are known to four decimals', (sides, slope, tilt, swing) => {
    expect(settings(sides, slope).bevelDeg).toBeCloseTo(tilt, 4);
    expect(settings(sides, slope).crosscutDeg).toBeCloseTo(swing, 4);
  });

  // common practice: eight upright sides want 22.5° on the tilt
  test('for eight upright sides are 22.5° of tilt and no swing', () => {
    expect(settings(8, 0).bevelDeg).toBeCloseTo(22.5, 12);
    expect(settings(8, 0).crosscutDeg).toBe(0);
  });
});

describe('strips', () => {
  // by hand, from the sizes of a ring 280 mm across the flats, 15 mm thick, sawn with a 2.6 mm kerf
  const twelve: Piece = { ...upright(12, 280), heightMm: 140, thicknessMm: 15 };
  const blade = { ...DEFAULT_BLADE, plateMm: 1.8, kerfMm: 2.6 };
  const stock = { ...DEFAULT_STOCK, trimMm: 15, holdMm: 200 };

  test('of twelve staves cut with sides swapped take 80.4 mm a stave and 1180 mm in all', () => {
    const geometry = ringGeometry(twelve);
    expect(pitchMm(geometry, blade, 'swapSides')).toBeCloseTo(80.4, 1);
    expect(stripNeededMm(geometry, blade, 'swapSides', stock)).toBeCloseTo(1180, 0);
  });

  test('of the same twelve staves turned over after every cut nest by a thickness times the tangent of the tilt', () => {
    const geometry = ringGeometry(twelve);
    // by hand: 75.026 − 15·0.26795 + 2.6/0.96593
    expect(pitchMm(geometry, blade, 'flipFace')).toBeCloseTo(73.698, 3);
    expect(stripNeededMm(geometry, blade, 'flipFace', stock)).toBeCloseTo(15 + 12 * 73.698 + 200, 1);
  });

  test('of a splayed ring widen the kerf by both angles', () => {
    const geometry = settings(8, 30);
    // by hand: cos 19.3546° · cos 11.7009° = cos 22.5° = 0.923880
    expect(pitchMm(geometry, blade, 'swapSides')).toBeCloseTo(geometry.staveWidthMm + 5.2 / 0.92388, 4);
    expect(pitchMm(geometry, blade, 'flipFace')).toBeCloseTo(100 - 5 * 0.351258 + 2.6 / 0.92388, 4);
  });

  test('hold their staves one strip after another, the last one fewer', () => {
    expect(stavesPerStrip(12, 1)).toEqual([12]);
    expect(stavesPerStrip(12, 3)).toEqual([4, 4, 4]);
    expect(stavesPerStrip(12, 5)).toEqual([3, 3, 3, 3]);
    expect(stavesPerStrip(7, 2)).toEqual([4, 3]);
    expect(stavesPerStrip(5, 5)).toEqual([1, 1, 1, 1, 1]);
  });
});
