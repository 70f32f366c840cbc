/** How the plan lies on its sheet: the scale, the place of the ring, and which sizes are drawn where. Px, y down. */
import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { type Dimension, heightWith, type PlacedDimension, placeDimension } from './dimension-placement';
import type { Lettering } from './lettering';
import type { PlanOutline, Point } from './ring-outline';

const TALLEST_RING_PX = 460;

export interface PlanSheet {
  topPx: number;
  bottomPx: number;
  scale: number;
  centre: Point;
  /** From mm on the plan to px on the sheet. */
  at: (point: Point) => Point;
  /** Circles that a size is the diameter of, where no two sides or corners to measure from are opposite each other. */
  circlesMm: number[];
  dimensions: PlacedDimension[];
  /** What the circle of the insert is, with the place of its middle; undefined where there is no room for it. */
  insertNote: { at: Point; text: string } | undefined;
}

/** What the wall of the ring shows in full from above: the thickness of upright staves, the width of flat ones. */
function wallShown(piece: Piece): { name: string; mm: number } | undefined {
  if (piece.slopeDeg === 0) return { name: 'thickness', mm: piece.thicknessMm };
  if (piece.slopeDeg === 90) return { name: 'width', mm: piece.heightMm };
  return undefined;
}

export function planSheet(piece: Piece, plan: PlanOutline, lettering: Lettering): PlanSheet {
  const { widthPx, textPx, figure, measure } = lettering;
  const geometry = ringGeometry(piece);
  const sidesFaceEachOther = piece.sides % 2 === 0;
  const byCorners = piece.size.by === 'outsideCorners';
  const wall = wallShown(piece);
  const outer = plan.outerWide.radiusMm;
  const opening = plan.innerNarrow.radiusMm;
  const cornersRadius = geometry.outsideCornersMm / 2;

  const rowPx = textPx * 2;
  const leftPx = textPx;
  const rightPx = wall && sidesFaceEachOther ? measure(figure(wall.mm)) + 1.5 * textPx : textPx;
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

  const slant = sidesFaceEachOther ? Math.tan(Math.PI / piece.sides) : 0;
  const fits = (mm: number) => measure(figure(mm)) + textPx < mm * scale;
  const clearFits = fits(2 * opening);
  const rows = [
    ...(clearFits ? [] : [{ radius: opening, y: opening * slant, name: 'clear' }]),
    { radius: outer, y: outer * slant, name: 'over the flats' },
    ...(byCorners ? [{ radius: cornersRadius, y: 0, name: 'over the corners' }] : []),
  ];
  const dimensions = rows.map(({ radius, y, name }, index) => across(radius, y, index + 1, name));
  if (clearFits) dimensions.push(through({ x: -opening, y: 0 }, { x: opening, y: 0 }, 'clear', 2 * opening));
  if (wall && sidesFaceEachOther)
    dimensions.push(through({ x: opening, y: 0 }, { x: outer, y: 0 }, wall.name, wall.mm));
  else if (wall && (fits(wall.mm) || measure(figure(wall.mm)) + 3 * textPx < opening * scale)) {
    // Upwards, so that a figure too long for the wall stands in the opening and not among the sizes below; where the
    // opening is too small for that, the elevation still shows it.
    const x = (outer * Math.tan(Math.PI / piece.sides)) / 2;
    dimensions.push(through({ x, y: outer }, { x, y: opening }, wall.name, wall.mm));
  }

  function insertNote(): PlanSheet['insertNote'] {
    if (!piece.insert) return undefined;
    const { diameterMm, clearanceMm } = piece.insert;
    const fits = (text: string) => measure(text) + textPx < diameterMm * scale * 0.97;
    const texts = [`insert ⌀ ${figure(diameterMm)} + ${figure(clearanceMm)}`, `insert ⌀ ${figure(diameterMm)}`];
    const text = texts.find(fits);
    return text === undefined ? undefined : { at: { x: centre.x, y: centre.y + 1.3 * textPx }, text };
  }

  const placed = dimensions.map((dimension) => placeDimension(dimension, lettering));
  return {
    ...heightWith(placed, 0, lowestPx + rows.length * rowPx + textPx * 0.75),
    scale,
    centre,
    at,
    circlesMm: [...(sidesFaceEachOther ? [] : [outer, opening]), ...(byCorners ? [cornersRadius] : [])],
    dimensions: placed,
    insertNote: insertNote(),
  };
}
