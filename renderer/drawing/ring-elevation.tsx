import { useId } from 'react';
import { angleText, lengthText } from '../../sim/wording/figures';
import { AngleMark } from './angle-mark';
import { DimensionLine, letteringPx } from './dimension-line';
import { DrawingFrame } from './drawing-frame';
import { DrawingPlace } from './drawing-place';
import type { DrawingProps, SizedDrawing } from './drawing-props';
import { elevationWords } from './drawing-words';
import { elevationOutline } from './elevation-outline';
import { type ElevationSheet, elevationSheet } from './elevation-sheet';
import { closedPath, Hatch, hatchFill, openPath } from './hatch';
import type { Point } from './ring-outline';

/** The ring to scale from the side, its right half cut open: how the staves lean, their height along the face, their thickness. */
export function RingElevation(props: DrawingProps) {
  return (
    <DrawingPlace piece={props.piece} widthPx={props.widthPx}>
      {(size) => <ElevationDrawing {...props} {...size} />}
    </DrawingPlace>
  );
}

function ElevationDrawing({ piece, display, fractions, angleStyle, widthPx, textPx }: SizedDrawing) {
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const figure = (mm: number) => lengthText(mm, display, { fractions: fractions === true });
  const slopeText = angleText(piece.slopeDeg, angleStyle);
  const elevation = elevationOutline(piece);
  const sheet = elevationSheet(piece, elevation, {
    widthPx,
    textPx,
    slopePx: letteringPx(slopeText, textPx),
    thicknessPx: letteringPx(figure(piece.thicknessMm), textPx),
  });
  const { section, outside, outsideEdges, insideEdges, joints } = elevation;
  const path = (points: Point[]) => openPath(points.map(sheet.at));
  const [wideOuter, wideInner, narrowOuter, narrowInner] = [
    section.wideOuter,
    section.wideInner,
    section.narrowOuter,
    section.narrowInner,
  ].map(sheet.at) as [Point, Point, Point, Point];
  const cut = closedPath([wideOuter, narrowOuter, narrowInner, wideInner]);
  const rowPx = 1.8 * textPx;
  // How high the ring stands; upright and flat rings show it elsewhere, and low ones leave no room for it.
  const overall = figure(section.narrowOuter.y - section.wideInner.y);
  const isLeaning = piece.slopeDeg > 0 && piece.slopeDeg < 90;
  const showsOverall = isLeaning && letteringPx(overall, textPx) + textPx < wideInner.y - narrowOuter.y;
  return (
    <DrawingFrame
      title="The ring from the side"
      description={elevationWords(piece, figure)}
      widthPx={widthPx}
      heightPx={sheet.heightPx}
    >
      <Hatch id={hatchId} />
      {sheet.isWhole && <path className="drawing-outline" d={path(outside)} />}
      {[...(sheet.isWhole ? [...joints, ...outsideEdges] : []), ...insideEdges].map((edge) => (
        <path key={path(edge)} className="drawing-thin" d={path(edge)} />
      ))}
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
          from={sheet.at({ x: sheet.leftMm, y: section.wideInner.y })}
          to={sheet.at({ x: sheet.leftMm, y: section.narrowOuter.y })}
          offset={rowPx}
          name="overall"
          figure={overall}
          textPx={textPx}
        />
      )}
    </DrawingFrame>
  );
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
