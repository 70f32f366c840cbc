/**
 * The outlines of a nominal ring in mm, for drawings to scale. Plan: x to the right, y down the sheet, the origin on the
 * ring's axis, seen from the narrow end. Section: x outward from the axis, z up, 0 at the outer edge of the wide end.
 */

import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';

export interface Point {
  x: number;
  y: number;
}

export interface Size {
  radiusMm: number;
  corners: Point[];
}

export interface PlanOutline {
  /** Direction of the first stave's flat, radians from x towards y: to the right when sides lie opposite, else down. */
  firstFlatRad: number;
  outerWide: Size;
  outerNarrow: Size;
  innerWide: Size;
  innerNarrow: Size;
}

/**
 * Corners of a regular polygon around the origin; corner k follows flat k. `inradius` is the distance to the flats.
 * The corners lie at inradius / cos(π/sides) (Machinery's Handbook, formulas and table of regular polygons).
 */
export function regularPolygon(sides: number, inradius: number, firstFlatRad: number): Point[] {
  const circumradius = inradius / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, k) => {
    const angle = firstFlatRad + ((2 * k + 1) * Math.PI) / sides;
    return { x: circumradius * Math.cos(angle), y: circumradius * Math.sin(angle) };
  });
}

/** The four edges of the ring as they appear from above, as regular polygons; `radiusMm` is to the flats. */
export function planOutline(piece: Piece): PlanOutline {
  const { wideOuter, narrowOuter, wideInner, narrowInner } = sectionOutline(piece);
  const firstFlatRad = piece.sides % 2 === 0 ? 0 : Math.PI / 2;
  const size = (radiusMm: number): Size => ({
    radiusMm,
    corners: regularPolygon(piece.sides, radiusMm, firstFlatRad),
  });
  return {
    firstFlatRad,
    outerWide: size(wideOuter.x),
    outerNarrow: size(narrowOuter.x),
    innerWide: size(wideInner.x),
    innerNarrow: size(narrowInner.x),
  };
}

/** One stave of the plan, turned so that its flat faces the x direction: the part between two joints. */
export function planStave(sides: number, innerRadius: number, outerRadius: number): Point[] {
  const slant = Math.tan(Math.PI / sides);
  return [
    { x: innerRadius, y: -innerRadius * slant },
    { x: outerRadius, y: -outerRadius * slant },
    { x: outerRadius, y: outerRadius * slant },
    { x: innerRadius, y: innerRadius * slant },
  ];
}

export interface SectionOutline {
  wideOuter: Point;
  wideInner: Point;
  narrowOuter: Point;
  narrowInner: Point;
}

/** Where a plane through the axis and the middle of a stave cuts it: a rectangle h × t leaning inward by the slope. y is z. */
export function sectionOutline(piece: Piece): SectionOutline {
  const { outsideFlatsMm, slopeRad } = ringGeometry(piece);
  const { heightMm, thicknessMm } = piece;
  // cos 90° is not quite 0 in floating point.
  const cos = piece.slopeDeg === 90 ? 0 : Math.cos(slopeRad);
  const sin = Math.sin(slopeRad);
  const at = (up: number, inward: number): Point => ({
    x: outsideFlatsMm / 2 - up * sin - inward * cos,
    y: up * cos - inward * sin,
  });
  return {
    wideOuter: at(0, 0),
    wideInner: at(0, thicknessMm),
    narrowOuter: at(heightMm, 0),
    narrowInner: at(heightMm, thicknessMm),
  };
}

/** Why a ring of these sizes cannot be drawn, or undefined. */
export function cannotBeDrawn(piece: Piece): string | undefined {
  const { sides, size, heightMm, thicknessMm } = piece;
  if (!(Number.isInteger(sides) && sides >= 3)) {
    return `No drawing: ${sides} sides make no ring. Give a whole number from 3 on.`;
  }
  if (!(size.mm > 0 && heightMm > 0 && thicknessMm > 0)) {
    return 'No drawing: size, height and thickness must all be above 0. Give each of them.';
  }
  if (!(sectionOutline(piece).narrowInner.x > 0)) {
    return 'No drawing: with these sizes the staves meet before the ring closes. Give a larger ring, or thinner or lower staves.';
  }
  return undefined;
}
