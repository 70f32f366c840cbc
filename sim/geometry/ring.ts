/**
 * Sizes and saw settings of a nominal ring. Millimetres; radians inside, degrees in the names that say so.
 *
 * Slope is measured from upright. With s the slope and N the sides: sin B = cos s · sin(180°/N) for the blade tilt away
 * from square, tan M = sin s · tan(180°/N) for the swing away from square. Both follow from the dihedral angle of two
 * neighbouring faces of a regular N-sided frustum (spherical trigonometry; cos B · cos M = cos(180°/N) is the check).
 */

export const RADIANS_PER_DEGREE = Math.PI / 180;

/** The sizes that describe a ring, as the result of a prediction tells them. */
export interface GeometrySummary {
  bevelDeg: number;
  crosscutDeg: number;
  staveWidthMm: number;
  staveWidthMidMm: number;
  outsideFlatsMm: number;
  outsideCornersMm: number;
  clearOpeningWideMm: number;
  clearOpeningNarrowMm: number;
  jointLengthMm: number;
}

export interface RingGeometry extends GeometrySummary {
  sides: number;
  heightMm: number;
  thicknessMm: number;
  slopeRad: number;
  /** Half the angle between neighbouring staves seen from above, π/N. */
  halfTurnRad: number;
  bevelRad: number;
  crosscutRad: number;
  /** Length of the joint up its edge, h / cos M. */
  edgeLengthMm: number;
  /** Radius to the outer flats at mid-height. */
  midInradiusMm: number;
}

/** What the nominal ring follows from; a project's piece holds it and more. */
export interface RingShape {
  sides: number;
  slopeDeg: number;
  size: { by: 'outsideFlats' | 'outsideCorners' | 'clearOpening' | 'staveWidth'; mm: number };
  heightMm: number;
  thicknessMm: number;
}

/** Outer stave width at the wide end that gives the size asked for; may come out ≤ 0 when thickness and slope rule it out. */
function staveWidthFor(piece: RingShape): number {
  const { size, heightMm, thicknessMm } = piece;
  const halfTurn = Math.PI / piece.sides;
  const slope = piece.slopeDeg * RADIANS_PER_DEGREE;
  switch (size.by) {
    case 'staveWidth':
      return size.mm;
    case 'outsideFlats':
      return size.mm * Math.tan(halfTurn);
    case 'outsideCorners':
      return size.mm * Math.sin(halfTurn);
    case 'clearOpening':
      return (size.mm + 2 * heightMm * Math.sin(slope) + 2 * thicknessMm * Math.cos(slope)) * Math.tan(halfTurn);
  }
}

/**
 * Every nominal size of the ring. Sides 3…60, slope 0…90°. Total: an impossible piece gives an opening or a mid-height
 * width at or below zero, which the project checks turn into a sentence.
 */
export function ringGeometry(piece: RingShape): RingGeometry {
  const halfTurnRad = Math.PI / piece.sides;
  const slopeRad = piece.slopeDeg * RADIANS_PER_DEGREE;
  const { heightMm, thicknessMm } = piece;
  // cos 90° is not quite 0 in floating point; a flat frame has no bevel at all.
  const cosSlope = piece.slopeDeg === 90 ? 0 : Math.cos(slopeRad);
  const sinSlope = Math.sin(slopeRad);
  const bevelRad = Math.asin(cosSlope * Math.sin(halfTurnRad));
  const crosscutRad = Math.atan(sinSlope * Math.tan(halfTurnRad));
  const staveWidthMm = staveWidthFor(piece);
  const inradius = staveWidthMm / (2 * Math.tan(halfTurnRad));
  const staveWidthMidMm = staveWidthMm - heightMm * Math.tan(crosscutRad);
  return {
    sides: piece.sides,
    heightMm,
    thicknessMm,
    slopeRad,
    halfTurnRad,
    bevelRad,
    crosscutRad,
    edgeLengthMm: heightMm / Math.cos(crosscutRad),
    midInradiusMm: staveWidthMidMm / (2 * Math.tan(halfTurnRad)),
    bevelDeg: bevelRad / RADIANS_PER_DEGREE,
    crosscutDeg: crosscutRad / RADIANS_PER_DEGREE,
    staveWidthMm,
    staveWidthMidMm,
    outsideFlatsMm: 2 * inradius,
    outsideCornersMm: (2 * inradius) / Math.cos(halfTurnRad),
    clearOpeningWideMm: 2 * (inradius - thicknessMm * cosSlope),
    clearOpeningNarrowMm: 2 * (inradius - heightMm * sinSlope - thicknessMm * cosSlope),
    jointLengthMm: thicknessMm / Math.cos(bevelRad),
  };
}

/** The part of the ring's geometry that the printed prediction carries. */
export function geometrySummary(geometry: RingGeometry): GeometrySummary {
  return {
    bevelDeg: geometry.bevelDeg,
    crosscutDeg: geometry.crosscutDeg,
    staveWidthMm: geometry.staveWidthMm,
    staveWidthMidMm: geometry.staveWidthMidMm,
    outsideFlatsMm: geometry.outsideFlatsMm,
    outsideCornersMm: geometry.outsideCornersMm,
    clearOpeningWideMm: geometry.clearOpeningWideMm,
    clearOpeningNarrowMm: geometry.clearOpeningNarrowMm,
    jointLengthMm: geometry.jointLengthMm,
  };
}

/** Whether the strip is turned over after every cut, or end for end. */
type CutSequence = 'flipFace' | 'swapSides';

/** Strip used up by one stave, mm. With the faces turned over the slanting cuts nest; with sides swapped a wedge falls between. */
export function pitchMm(geometry: RingGeometry, blade: { kerfMm: number }, sequence: CutSequence): number {
  const { bevelRad, crosscutRad } = geometry;
  const kerfAlongStrip = blade.kerfMm / (Math.cos(bevelRad) * Math.cos(crosscutRad));
  return sequence === 'flipFace'
    ? geometry.staveWidthMidMm - geometry.thicknessMm * Math.tan(bevelRad) + kerfAlongStrip
    : geometry.staveWidthMm + 2 * kerfAlongStrip;
}

/** How many staves each strip carries, first strip first; the last may carry fewer. */
export function stavesPerStrip(sides: number, stripCount: number): number[] {
  const full = Math.ceil(sides / stripCount);
  const strips: number[] = [];
  for (let left = sides; left > 0; left -= full) strips.push(Math.min(full, left));
  return strips;
}

/** Shortest strip that carries its staves and still leaves the hold length, mm, for the fullest strip. */
export function stripNeededMm(
  geometry: RingGeometry,
  blade: { kerfMm: number },
  sequence: CutSequence,
  stock: { trimMm: number; holdMm: number; stripCount: number },
): number {
  const most = Math.ceil(geometry.sides / stock.stripCount);
  return stock.trimMm + most * pitchMm(geometry, blade, sequence) + stock.holdMm;
}
