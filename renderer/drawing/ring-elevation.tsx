import { useId } from 'react';
import type { Piece } from '../../sim/project/document';
import { angleText, lengthText } from '../../sim/wording/figures';
import { AngleMark } from './angle-mark';
import { DimensionLine, letteringPx } from './dimension-line';
import { DrawingFrame, NoDrawing } from './drawing-frame';
import type { DrawingProps } from './drawing-props';
import { elevationWords } from './drawing-words';
import { type ElevationOutline, elevationOutline } from './elevation-outline';
import { closedPath, Hatch, hatchFill, openPath } from './hatch';
import { cannotBeDrawn, type Point } from './ring-outline';
import { useDrawnSize } from './use-drawn-size';

const TALLEST_RING_PX = 300;

/** The ring to scale from the side, its right half cut open: how the staves lean, their height along the face, their thickness. */
export function RingElevation({ piece, display, fractions, angleStyle, widthPx: fixedWidthPx }: DrawingProps) {
  const { ref, widthPx, textPx } = useDrawnSize(fixedWidthPx);
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const sentence = cannotBeDrawn(piece);
  if (sentence !== undefined) return <NoDrawing sentence={sentence} />;

  const figure = (mm: number) => lengthText(mm, display, { fractions: fractions === true });
  const slopeText = angleText(piece.slopeDeg, angleStyle);
  const elevation = elevationOutline(piece);
  const sheet = elevationSheet(piece, elevation, {
    widthPx,
    textPx,
    slopePx: letteringPx(slopeText, textPx),
    thicknessPx: letteringPx(figure(piece.thicknessMm), textPx),
  });
  const { section, outside, edges, joints } = elevation;
  const path = (points: Point[]) => openPath(points.map(sheet.at));
  const [wideOuter, wideInner, narrowOuter, narrowInner] = [
    section.wideOuter,
    section.wideInner,
    section.narrowOuter,
    section.narrowInner,
  ].map(sheet.at) as [Point, Point, Point, Point];
  const cut = closedPath([wideOuter, narrowOuter, narrowInner, wideInner]);
  const rowPx = 1.8 * textPx;
  const leftmost = Math.min(...outside.map((point) => point.x));
  // How high the ring stands; upright and flat rings show it elsewhere, and low ones leave no room for it.
  const overall = figure(section.narrowOuter.y - section.wideInner.y);
  const isLeaning = piece.slopeDeg > 0 && piece.slopeDeg < 90;
  const showsOverall = isLeaning && letteringPx(overall, textPx) + textPx < wideInner.y - narrowOuter.y;
  return (
    <div className="drawing" ref={ref}>
      <DrawingFrame
        title="The ring from the side"
        description={elevationWords(piece, figure)}
        widthPx={widthPx}
        heightPx={sheet.heightPx}
      >
        <Hatch id={hatchId} />
        {joints.map((joint) => (
          <path key={path(joint)} className="drawing-thin" d={path(joint)} />
        ))}
        {edges.map((edge) => (
          <path key={path(edge)} className="drawing-thin" d={path(edge)} />
        ))}
        <path className="drawing-outline" d={path(outside)} />
        <path fill={hatchFill(hatchId)} d={cut} />
        <path className="drawing-outline" d={cut} />
        <line className="drawing-axis" x1={sheet.axisX} x2={sheet.axisX} y1={2} y2={sheet.lowestPx + textPx} />
        {piece.slopeDeg > 0 && <Slope at={wideOuter} slopeDeg={piece.slopeDeg} text={slopeText} sheet={sheet} />}
        <DimensionLine
          from={wideInner}
          to={narrowInner}
          offset={rowPx}
          name={piece.slopeDeg === 90 ? 'width' : 'height'}
          figure={figure(piece.heightMm)}
          textPx={textPx}
        />
        <DimensionLine
          from={wideOuter}
          to={wideInner}
          offset={rowPx}
          name="thickness"
          figure={figure(piece.thicknessMm)}
          textPx={textPx}
        />
        {showsOverall && (
          <DimensionLine
            from={sheet.at({ x: leftmost, y: section.wideInner.y })}
            to={sheet.at({ x: leftmost, y: section.narrowOuter.y })}
            offset={rowPx}
            name="overall"
            figure={overall}
            textPx={textPx}
          />
        )}
      </DrawingFrame>
    </div>
  );
}

interface ElevationSheet {
  heightPx: number;
  axisX: number;
  lowestPx: number;
  /** Length of the upright line that the slope is measured from. */
  uprightPx: number;
  textPx: number;
  at: (point: Point) => Point;
}

interface ElevationRoom {
  widthPx: number;
  textPx: number;
  /** Lengths of the lettering for the slope and the thickness. */
  slopePx: number;
  thicknessPx: number;
}

function elevationSheet(piece: Piece, { section, outside }: ElevationOutline, room: ElevationRoom): ElevationSheet {
  const { widthPx, textPx, slopePx, thicknessPx } = room;
  const leans = piece.slopeDeg > 0;
  const leftMm = Math.min(...outside.map((point) => point.x));
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
  return { heightPx: Math.ceil(lowestPx + belowPx), axisX, lowestPx, uprightPx, textPx, at };
}

/** The slope between an upright line at the wide end and the outer face. */
function Slope({ at, slopeDeg, text, sheet }: { at: Point; slopeDeg: number; text: string; sheet: ElevationSheet }) {
  const { uprightPx, textPx } = sheet;
  const radiusPx = 0.8 * uprightPx;
  const upright = -Math.PI / 2;
  return (
    <>
      <line className="dimension-extension" x1={at.x} y1={at.y} x2={at.x} y2={at.y - uprightPx} />
      <AngleMark at={at} fromRad={upright - (slopeDeg * Math.PI) / 180} toRad={upright} radiusPx={radiusPx} />
      <text className="drawing-text" fontSize={textPx} x={at.x + 0.4 * textPx} y={at.y - radiusPx}>
        {text}
      </text>
    </>
  );
}
