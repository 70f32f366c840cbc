/** How the elevation lies on its sheet. Px, y down. */
import type { Piece } from '../../sim/project/document';
import type { ElevationOutline } from './elevation-outline';
import type { Point } from './ring-outline';

const TALLEST_RING_PX = 300;
/** Below this width, in heights of the lettering, only the cut half is drawn, at twice the size. */
const NARROWEST_WHOLE = 28;

export interface ElevationSheet {
  heightPx: number;
  axisX: number;
  /** Whether there is room for the outside half too, and not for the cut half alone. */
  isWhole: boolean;
  leftMm: number;
  lowestPx: number;
  /** Length of the upright line that the slope is measured from. */
  uprightPx: number;
  textPx: number;
  at: (point: Point) => Point;
}

export interface ElevationRoom {
  widthPx: number;
  textPx: number;
  /** Lengths of the lettering for the slope and the thickness. */
  slopePx: number;
  thicknessPx: number;
}

export function elevationSheet(
  piece: Piece,
  { section, outside }: ElevationOutline,
  room: ElevationRoom,
): ElevationSheet {
  const { widthPx, textPx, slopePx, thicknessPx } = room;
  const leans = piece.slopeDeg > 0;
  const isWhole = widthPx >= NARROWEST_WHOLE * textPx;
  const leftMm = isWhole ? Math.min(...outside.map((point) => point.x)) : 0;
  const rightMm = section.wideOuter.x;
  const topMm = section.narrowOuter.y;
  const bottomMm = section.wideInner.y;
  const leftPx = leans && piece.slopeDeg < 90 ? 3.5 * textPx : textPx;
  const rightPx = leans ? Math.max(slopePx + textPx, 3.5 * textPx) : 1.5 * textPx;
  const scale = Math.min((widthPx - leftPx - rightPx) / (rightMm - leftMm), TALLEST_RING_PX / (topMm - bottomMm));
  const sparePx = widthPx - leftPx - rightPx - (rightMm - leftMm) * scale;
  const axisX = leftPx + sparePx / 2 - leftMm * scale;
  const uprightPx = leans ? 5 * textPx : 0;
  const abovePx = Math.max(textPx, uprightPx + 1.2 * textPx - topMm * scale);
  const at = ({ x, y }: Point): Point => ({ x: axisX + x * scale, y: abovePx + (topMm - y) * scale });
  const lowestPx = at({ x: 0, y: bottomMm }).y;
  // The thickness is written along the end of the stave, the more downwards the further it leans.
  const slope = (piece.slopeDeg * Math.PI) / 180;
  const belowPx = Math.max(3 * textPx, 2.2 * textPx * Math.cos(slope) + (thicknessPx + 2 * textPx) * Math.sin(slope));
  return { heightPx: Math.ceil(lowestPx + belowPx), axisX, isWhole, leftMm, lowestPx, uprightPx, textPx, at };
}
