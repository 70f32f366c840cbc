/** How the plan lies on its sheet: the scale, the place of the ring, and which sizes are drawn where. Px, y down. */
import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { letteringPx } from './dimension-line';
import type { PlanOutline, Point } from './ring-outline';

const TALLEST_RING_PX = 460;

export interface SheetOptions {
  widthPx: number;
  textPx: number;
  figure: (mm: number) => string;
}

/** What a `DimensionLine` draws, without its lettering size. */
export interface Dimension {
  from: Point;
  to: Point;
  offset: number;
  name: string;
  figure: string;
}

export interface PlanSheet {
  heightPx: number;
  scale: number;
  centre: Point;
  /** From mm on the plan to px on the sheet. */
  at: (point: Point) => Point;
  /** Circles that a size is the diameter of, where no two sides or corners to measure from are opposite each other. */
  circlesMm: number[];
  dimensions: Dimension[];
  /** What the circle of the insert is, with the place of its middle; undefined where there is no room for it. */
  insertNote: { at: Point; text: string } | undefined;
}

/** What the wall of the ring shows in full from above: the thickness of upright staves, the width of flat ones. */
function wallShown(piece: Piece): { name: string; mm: number } | undefined {
  if (piece.slopeDeg === 0) return { name: 'thickness', mm: piece.thicknessMm };
  if (piece.slopeDeg === 90) return { name: 'width', mm: piece.heightMm };
  return undefined;
}

export function planSheet(piece: Piece, plan: PlanOutline, { widthPx, textPx, figure }: SheetOptions): PlanSheet {
  const geometry = ringGeometry(piece);
  const sidesFaceEachOther = piece.sides % 2 === 0;
  const byCorners = piece.size.by === 'outsideCorners';
  const wall = wallShown(piece);
  const outer = plan.outerWide.radiusMm;
  const opening = plan.innerNarrow.radiusMm;
  const cornersRadius = geometry.outsideCornersMm / 2;

  const rowPx = textPx * 2;
  const rows = byCorners ? 2 : 1;
  const leftPx = textPx;
  const rightPx = wall && sidesFaceEachOther ? letteringPx(figure(wall.mm), textPx) + 1.5 * textPx : textPx;
  const reach = (axis: 'x' | 'y') => {
    const values = plan.outerWide.corners.map((corner) => corner[axis]);
    const circle = byCorners ? cornersRadius : 0;
    return [Math.min(-circle, ...values), Math.max(circle, ...values)] as const;
  };
  const [leftMm, rightMm] = reach('x');
  const [topMm, bottomMm] = reach('y');
  const scale = Math.min((widthPx - leftPx - rightPx) / (rightMm - leftMm), TALLEST_RING_PX / (bottomMm - topMm));
  const sparePx = widthPx - leftPx - rightPx - (rightMm - leftMm) * scale;
  const centre = { x: leftPx + sparePx / 2 - leftMm * scale, y: textPx / 2 - topMm * scale };
  const at = ({ x, y }: Point): Point => ({ x: centre.x + x * scale, y: centre.y + y * scale });
  const lowestPx = at({ x: 0, y: bottomMm }).y;

  /** A size measured straight across, its line in the given row under the ring; `y` is where its ends lie, mm. */
  const across = (radius: number, y: number, row: number, name: string): Dimension => {
    const [from, to] = [at({ x: radius, y }), at({ x: -radius, y })];
    return { from, to, offset: lowestPx + row * rowPx - from.y, name, figure: figure(2 * radius) };
  };

  /** A size measured from inside to outside through the wall, or across the opening. */
  const through = (from: Point, to: Point, name: string, mm: number): Dimension => ({
    from: at(from),
    to: at(to),
    offset: 0,
    name,
    figure: figure(mm),
  });

  const halfSide = outer * Math.tan(Math.PI / piece.sides);
  const dimensions = [across(outer, sidesFaceEachOther ? halfSide : 0, 1, 'over the flats')];
  if (byCorners) dimensions.push(across(cornersRadius, 0, 2, 'over the corners'));
  if (letteringPx(figure(2 * opening), textPx) + textPx < 2 * opening * scale) {
    dimensions.push(through({ x: -opening, y: 0 }, { x: opening, y: 0 }, 'clear', 2 * opening));
  }
  if (wall && sidesFaceEachOther)
    dimensions.push(through({ x: opening, y: 0 }, { x: outer, y: 0 }, wall.name, wall.mm));
  else if (wall) {
    // Upwards, so that a figure too long for the wall stands in the opening and not among the sizes below.
    const x = halfSide / 2;
    dimensions.push(through({ x, y: outer }, { x, y: opening }, wall.name, wall.mm));
  }

  function insertNote(): PlanSheet['insertNote'] {
    if (!piece.insert) return undefined;
    const { diameterMm, clearanceMm } = piece.insert;
    const fits = (text: string) => letteringPx(text, textPx) + textPx < diameterMm * scale * 0.97;
    const texts = [`insert ⌀ ${figure(diameterMm)} + ${figure(clearanceMm)}`, `insert ⌀ ${figure(diameterMm)}`];
    const text = texts.find(fits);
    return text === undefined ? undefined : { at: { x: centre.x, y: centre.y + 1.3 * textPx }, text };
  }

  return {
    heightPx: Math.ceil(lowestPx + rows * rowPx + textPx * 0.75),
    scale,
    centre,
    at,
    circlesMm: [...(sidesFaceEachOther ? [] : [outer, opening]), ...(byCorners ? [cornersRadius] : [])],
    dimensions,
    insertNote: insertNote(),
  };
}
