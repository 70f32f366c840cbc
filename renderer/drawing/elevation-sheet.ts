/** How the elevation lies on its sheet, and the sizes shown on it. Px, y down. */
import type { Piece } from '../../sim/project/document';
import { type Dimension, heightWith, type PlacedDimension, placeDimension } from './dimension-placement';
import type { ElevationOutline } from './elevation-outline';
import type { Lettering } from './lettering';
import type { Point } from './ring-outline';

const TALLEST_RING_PX = 300;
/** Below this width, in heights of the lettering, only the cut half is drawn, at twice the size. */
const NARROWEST_WHOLE = 28;

export interface ElevationSheet {
  topPx: number;
  bottomPx: number;
  /** From mm to px on the sheet. */
  at: (point: Point) => Point;
  /** Whether there is room for the outside half too, and not for the cut half alone. */
  isWhole: boolean;
  axis: [Point, Point];
  /** Length of the upright line that the slope is measured from; 0 for an upright ring. */
  uprightPx: number;
  dimensions: PlacedDimension[];
}

export function elevationSheet(piece: Piece, outline: ElevationOutline, lettering: Lettering): ElevationSheet {
  const { widthPx, textPx, angle, measure } = lettering;
  const { section, outside } = outline;
  const leans = piece.slopeDeg > 0;
  const isWhole = widthPx >= NARROWEST_WHOLE * textPx;
  const leftMm = isWhole ? Math.min(...outside.map((point) => point.x)) : 0;
  const rightMm = section.wideOuter.x;
  const topMm = section.narrowOuter.y;
  const bottomMm = section.wideInner.y;

  const leftPx = leans && piece.slopeDeg < 90 ? 3.5 * textPx : textPx;
  const rightPx = leans ? Math.max(measure(angle(piece.slopeDeg)) + textPx, 3.5 * textPx) : 1.5 * textPx;
  const scale = Math.min((widthPx - leftPx - rightPx) / (rightMm - leftMm), TALLEST_RING_PX / (topMm - bottomMm));
  const sparePx = widthPx - leftPx - rightPx - (rightMm - leftMm) * scale;
  const axisX = leftPx + sparePx / 2 - leftMm * scale;
  const at = ({ x, y }: Point): Point => ({ x: axisX + x * scale, y: (topMm - y) * scale });

  const uprightPx = leans ? 5 * textPx : 0;
  const lowestPx = at({ x: 0, y: bottomMm }).y;
  const dimensions = sizesOf(piece, outline, { ...lettering, at, leftMm }).map((size) =>
    placeDimension(size, lettering),
  );
  const bareTopPx = Math.min(-textPx, at(section.wideOuter).y - uprightPx - textPx);
  return {
    ...heightWith(dimensions, bareTopPx, lowestPx + 3 * textPx),
    at,
    isWhole,
    axis: [
      { x: axisX, y: -0.8 * textPx },
      { x: axisX, y: lowestPx + textPx },
    ],
    uprightPx,
    dimensions,
  };
}

interface SizesPlace extends Lettering {
  at: (point: Point) => Point;
  leftMm: number;
}

/** Height along the face, thickness, and how high a leaning ring stands where there is room to say so. */
function sizesOf(piece: Piece, { section }: ElevationOutline, place: SizesPlace): Dimension[] {
  const { at, leftMm, textPx, figure, measure } = place;
  const { wideOuter, wideInner, narrowInner, narrowOuter } = section;
  const offset = 1.8 * textPx;
  const sizes: Dimension[] = [
    {
      from: at(wideInner),
      to: at(narrowInner),
      offset,
      name: piece.slopeDeg === 90 ? 'width' : 'height',
      figure: figure(piece.heightMm),
    },
    { from: at(wideOuter), to: at(wideInner), offset, name: 'thickness', figure: figure(piece.thicknessMm) },
  ];
  const isLeaning = piece.slopeDeg > 0 && piece.slopeDeg < 90;
  const overall = figure(narrowOuter.y - wideInner.y);
  const [low, high] = [at({ x: leftMm, y: wideInner.y }), at({ x: leftMm, y: narrowOuter.y })];
  if (isLeaning && measure(overall) + textPx < low.y - high.y) {
    sizes.push({ from: low, to: high, offset, name: 'overall', figure: overall });
  }
  return sizes;
}
