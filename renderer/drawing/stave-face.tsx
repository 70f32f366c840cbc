import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { AngleFromUpright } from './angle-from-upright';
import { DimensionLine } from './dimension-line';
import { type Dimension, heightWith, type PlacedDimension, placeDimension } from './dimension-placement';
import { closedPath } from './hatch';
import type { Lettering } from './lettering';
import type { Point } from './ring-outline';
import { staveFace } from './stave-outline';

const TALLEST_PX = 260;

export interface FaceSheet {
  topPx: number;
  bottomPx: number;
  /** From mm on the face to px; y = 0 is the wide end. */
  at: (point: Point) => Point;
  legPx: number;
  dimensions: PlacedDimension[];
}

const swingText = (piece: Piece, { angle }: Lettering) => `swing ${angle(ringGeometry(piece).crosscutDeg)}`;

/** How the face lies on a sheet as wide as the lettering says, with its widths and its height. */
export function faceSheet(piece: Piece, lettering: Lettering): FaceSheet {
  const { textPx, widthPx, measure } = lettering;
  const { widths } = staveFace(piece);
  const isTapered = piece.slopeDeg > 0;
  const leftPx = 3.2 * textPx;
  const rightPx = isTapered ? measure(swingText(piece, lettering)) + textPx : textPx;
  const scale = Math.min((widthPx - leftPx - rightPx) / widths.wide, TALLEST_PX / piece.heightMm);
  const footX = leftPx + (widthPx - leftPx - rightPx) / 2;
  const at = ({ x, y }: Point): Point => ({ x: footX + x * scale, y: -y * scale });
  const dimensions = sizesOf(piece, { ...lettering, at, scale }).map((size) => placeDimension(size, lettering));
  const legPx = isTapered ? 5 * textPx : 0;
  const bareTopPx = Math.min(-piece.heightMm * scale, -legPx) - textPx;
  return { ...heightWith(dimensions, bareTopPx, 4.4 * textPx), at, legPx, dimensions };
}

function sizesOf(piece: Piece, place: Lettering & { at: (point: Point) => Point; scale: number }): Dimension[] {
  const { at, scale, textPx, figure, measure } = place;
  const { wideLeft, wideRight, narrowLeft, narrowRight, widths } = staveFace(piece);
  const isTapered = piece.slopeDeg > 0;
  const isFlat = piece.slopeDeg === 90;
  const highPx = piece.heightMm * scale;
  const row = 1.8 * textPx;
  const fits = (mm: number) => measure(figure(mm)) + textPx < mm * scale;

  const height: Dimension = {
    from: at(wideLeft),
    to: at({ x: wideLeft.x, y: piece.heightMm }),
    offset: row,
    name: isFlat ? 'width' : 'height',
    figure: figure(piece.heightMm),
  };
  const wide: Dimension = {
    from: at(wideRight),
    to: at(wideLeft),
    offset: row,
    name: isFlat ? 'outer edge' : isTapered ? 'wide end' : 'width',
    figure: figure(widths.wide),
  };
  if (!isTapered) return [height, wide];

  const narrow: Dimension = {
    from: at(narrowLeft),
    to: at(narrowRight),
    // A narrow end too short for its figure has it beside, above the words for the swing.
    offset: fits(widths.narrow) ? textPx : Math.max(textPx, 5.6 * textPx - highPx),
    name: isFlat ? 'inner edge' : 'narrow end',
    figure: figure(widths.narrow),
  };
  if (highPx < 3.5 * textPx || !fits(widths.middle)) return [height, wide, narrow];
  const across = (x: number) => at({ x, y: piece.heightMm / 2 });
  const middle: Dimension = {
    from: across(-widths.middle / 2),
    to: across(widths.middle / 2),
    offset: 0,
    name: 'middle',
    figure: figure(widths.middle),
  };
  return [height, wide, narrow, middle];
}

/** The outer face with its widths, its height and how far the gauge swings from square. */
export function StaveFace({ piece, sheet, lettering }: { piece: Piece; sheet: FaceSheet; lettering: Lettering }) {
  const { textPx } = lettering;
  const { at, bottomPx, legPx, dimensions } = sheet;
  const { wideLeft, wideRight, narrowRight, narrowLeft } = staveFace(piece);
  return (
    <>
      <path className="drawing-outline" d={closedPath([wideLeft, wideRight, narrowRight, narrowLeft].map(at))} />
      {dimensions.map((placed) => (
        <DimensionLine key={`${placed.at.x} ${placed.at.y}`} placed={placed} textPx={textPx} />
      ))}
      {piece.slopeDeg > 0 && (
        <AngleFromUpright
          at={at(wideRight)}
          turnRad={-ringGeometry(piece).crosscutRad}
          legPx={legPx}
          text={swingText(piece, lettering)}
          textPx={textPx}
        />
      )}
      <text
        className="drawing-text drawing-text-soft"
        fontSize={textPx}
        textAnchor="middle"
        x={at({ x: 0, y: 0 }).x}
        y={bottomPx - 0.5 * textPx}
      >
        outer face
      </text>
    </>
  );
}
