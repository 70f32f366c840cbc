import { useId } from 'react';
import { AngleFromUpright } from './angle-from-upright';
import { DimensionLine, Stroke } from './dimension-line';
import { DrawingFrame } from './drawing-frame';
import { DrawingPlace } from './drawing-place';
import type { DrawingProps, SizedDrawing } from './drawing-props';
import { elevationWords } from './drawing-words';
import { elevationOutline } from './elevation-outline';
import { elevationSheet } from './elevation-sheet';
import { closedPath, Hatch, hatchFill, openPath } from './hatch';
import { letteringOf } from './lettering';
import type { Point } from './ring-outline';

/** The ring to scale from the side, its right half cut open: how the staves lean, their height along the face, their thickness. */
export function RingElevation(props: DrawingProps) {
  return (
    <DrawingPlace piece={props.piece} widthPx={props.widthPx}>
      {(size) => <ElevationDrawing {...props} {...size} />}
    </DrawingPlace>
  );
}

function ElevationDrawing(props: SizedDrawing) {
  const { piece, widthPx, textPx } = props;
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const lettering = letteringOf(props);
  const elevation = elevationOutline(piece);
  const sheet = elevationSheet(piece, elevation, lettering);
  const { section, outside, outsideEdges, insideEdges, joints } = elevation;
  const path = (points: Point[]) => openPath(points.map(sheet.at));
  const cut = closedPath(
    [section.wideOuter, section.narrowOuter, section.narrowInner, section.wideInner].map(sheet.at),
  );
  return (
    <DrawingFrame
      title="The ring from the side"
      description={elevationWords(piece, lettering)}
      widthPx={widthPx}
      topPx={sheet.topPx}
      bottomPx={sheet.bottomPx}
    >
      <Hatch id={hatchId} />
      {sheet.isWhole && <path className="drawing-outline" d={path(outside)} />}
      {[...(sheet.isWhole ? [...joints, ...outsideEdges] : []), ...insideEdges].map((edge) => (
        <path key={path(edge)} className="drawing-thin" d={path(edge)} />
      ))}
      <path fill={hatchFill(hatchId)} d={cut} />
      <path className="drawing-outline" d={cut} />
      <Stroke className="drawing-axis" ends={sheet.axis} />
      {piece.slopeDeg > 0 && (
        <AngleFromUpright
          at={sheet.at(section.wideOuter)}
          turnRad={(-piece.slopeDeg * Math.PI) / 180}
          legPx={sheet.uprightPx}
          text={lettering.angle(piece.slopeDeg)}
          textPx={textPx}
        />
      )}
      {sheet.dimensions.map((placed) => (
        <DimensionLine key={`${placed.at.x} ${placed.at.y}`} placed={placed} textPx={textPx} />
      ))}
    </DrawingFrame>
  );
}
