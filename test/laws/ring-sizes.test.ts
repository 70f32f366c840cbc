/** Laws that the sizes and settings of every ring obey, whatever its sides, slope and size. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RADIANS_PER_DEGREE, ringGeometry } from '../../sim/geometry/ring';
import type { SizeBy } from '../../sim/project/document';
import { anyRing, geometryOf, pieceOf } from '../support/rings';

const ROUNDING = 1e-9;

const everySide = Array.from({ length: 58 }, (_, k) => k + 3);

describe('the four ways of giving the size', () => {
  test('describe the same ring for every number of sides and every slope', () => {
    for (const sides of everySide) {
      for (let slopeDeg = 0; slopeDeg <= 90; slopeDeg += 7.5) {
        const piece = { ...pieceOf({ sides, slopeDeg, midWidthMm: 90, heightMm: 40, thicknessMm: 8 }) };
        const first = ringGeometry(piece);
        const sizes: Record<SizeBy, number> = {
          staveWidth: first.staveWidthMm,
          outsideFlats: first.outsideFlatsMm,
          outsideCorners: first.outsideCornersMm,
          clearOpening: first.clearOpeningNarrowMm,
        };
        for (const by of Object.keys(sizes) as SizeBy[]) {
          const again = ringGeometry({ ...piece, size: { by, mm: sizes[by] } });
          expect(again.staveWidthMm, `${sides} sides, ${slopeDeg}°, by ${by}`).toBeCloseTo(first.staveWidthMm, 9);
        }
      }
    }
  });

  test('describe the same ring at any size', () => {
    fc.assert(
      fc.property(anyRing, fc.constantFrom<SizeBy>('outsideFlats', 'outsideCorners', 'clearOpening'), (ring, by) => {
        const piece = pieceOf(ring);
        const first = ringGeometry(piece);
        const mm = {
          outsideFlats: first.outsideFlatsMm,
          outsideCorners: first.outsideCornersMm,
          clearOpening: first.clearOpeningNarrowMm,
          staveWidth: first.staveWidthMm,
        }[by];
        expect(ringGeometry({ ...piece, size: { by, mm } }).staveWidthMidMm).toBeCloseTo(ring.midWidthMm, 8);
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

describe('tilt and swing', () => {
  // published: spherical trigonometry of the frustum's corner, as in old trade pocketbooks
  test('together make the half turn: cos T · cos G = cos(180°/N), and tan s = sin G / tan T', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const { bevelRad, crosscutRad } = geometryOf(ring);
        expect(Math.cos(bevelRad) * Math.cos(crosscutRad)).toBeCloseTo(Math.cos(Math.PI / ring.sides), 12);
        const slope = ring.slopeDeg * RADIANS_PER_DEGREE;
        // cross-multiplied, because tan 90° has no value
        expect(Math.sin(slope) * Math.tan(bevelRad)).toBeCloseTo(Math.cos(slope) * Math.sin(crosscutRad), 12);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  test('show as tan E = cos s · tan(180°/N) on an edge squared across the face', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const { bevelRad, crosscutRad } = geometryOf(ring);
        // seen along the stave the bevel's tangent grows by 1 / cos G
        const seen = Math.tan(bevelRad) / Math.cos(crosscutRad);
        expect(seen).toBeCloseTo(Math.cos(ring.slopeDeg * RADIANS_PER_DEGREE) * Math.tan(Math.PI / ring.sides), 12);
      }),
      { seed: 3, numRuns: 500 },
    );
  });
});

describe('openings', () => {
  test('narrow from the wide end to the narrow end by twice the height times the sine of the slope', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const { clearOpeningWideMm, clearOpeningNarrowMm, outsideFlatsMm } = geometryOf(ring);
        const slope = ring.slopeDeg * RADIANS_PER_DEGREE;
        const scale = ROUNDING * outsideFlatsMm;
        expect(Math.abs(clearOpeningWideMm - clearOpeningNarrowMm - 2 * ring.heightMm * Math.sin(slope))).toBeLessThan(
          scale,
        );
        expect(Math.abs(outsideFlatsMm - clearOpeningWideMm - 2 * ring.thicknessMm * Math.cos(slope))).toBeLessThan(
          scale,
        );
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  test('are those of a piece drawn on paper: eight sides, 30°, 100 mm staves 60 mm high and 10 mm thick', () => {
    // by hand: R = 50 / tan 22.5° = 120.7107; 2(R − 10·0.866025); less 2·60·0.5
    const geometry = ringGeometry({
      sides: 8,
      slopeDeg: 30,
      size: { by: 'staveWidth', mm: 100 },
      heightMm: 60,
      thicknessMm: 10,
    });
    expect(geometry.outsideFlatsMm).toBeCloseTo(241.4214, 4);
    expect(geometry.outsideCornersMm).toBeCloseTo(261.3126, 4);
    expect(geometry.clearOpeningWideMm).toBeCloseTo(224.10085, 4);
    expect(geometry.clearOpeningNarrowMm).toBeCloseTo(164.10085, 4);
    // tan 11.7009° = 0.207107
    expect(geometry.staveWidthMidMm).toBeCloseTo(100 - 60 * 0.207107, 4);
    // 10 / cos 19.3546° = 10 / 0.943489
    expect(geometry.jointLengthMm).toBeCloseTo(10.599, 3);
  });
});
