import { useId } from 'react';
import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { AngleFromUpright } from './angle-from-upright';
import { DimensionLine } from './dimension-line';
import { heightWith, type PlacedDimension, placeDimension } from './dimension-placement';
import { closedPath, Hatch, hatchFill, openPath } from './hatch';
import type { Lettering } from './lettering';
import type { Point } from './ring-outline';
import { jointSection } from './stave-outline';

export interface JointSheet {
  widthPx: number;
  topPx: number;
  bottomPx: number;
  /** Outer and inner edge of the joint; y = 0 is the outer face. */
  outer: Point;
  inner: Point;
  /** Where the stave is broken off. */
  brokenX: number;
  legPx: number;
  dimensions: PlacedDimension[];
}

const CAPTION = 'joint, along the edge';
const tiltText = (piece: Piece, { angle }: Lettering) => `tilt ${angle(ringGeometry(piece).bevelDeg)}`;

/** How the joint lies on a sheet of its own, no wider than the lettering says. */
export function jointSheet(piece: Piece, lettering: Lettering): JointSheet {
  const { textPx, widthPx: mostPx, figure, measure } = lettering;
  const { bevelRad } = ringGeometry(piece);
  const section = jointSection(piece);
  const legPx = 4 * textPx;
  const leftPx = 3.4 * textPx;
  const tailPx = 3 * textPx;
  const rightPx = Math.max(legPx * Math.sin(bevelRad) + measure(tiltText(piece, lettering)), 4 * textPx) + textPx;
  const roomPx = mostPx - leftPx - tailPx - rightPx;
  const deepPx = Math.min(7 * textPx, roomPx / Math.max(Math.tan(bevelRad), 0.01));
  const scale = deepPx / piece.thicknessMm;
  const outer: Point = { x: leftPx + tailPx - section.inner.x * scale, y: 0 };
  const inner: Point = { x: leftPx + tailPx, y: deepPx };
  const widthPx = Math.max(outer.x + rightPx, measure(CAPTION));
  const sheet = { widthPx, textPx };
  const dimensions = [
    placeDimension(
      {
        from: { x: leftPx, y: deepPx },
        to: { x: leftPx, y: 0 },
        offset: 1.6 * textPx,
        figure: figure(piece.thicknessMm),
      },
      sheet,
    ),
    placeDimension({ from: outer, to: inner, offset: 1.8 * textPx, figure: figure(section.jointLengthMm) }, sheet),
  ];
  const bare = heightWith(dimensions, -legPx - 1.5 * textPx, deepPx + 1.8 * textPx);
  return {
    widthPx,
    topPx: bare.topPx,
    bottomPx: bare.bottomPx + 2.2 * textPx,
    outer,
    inner,
    brokenX: leftPx,
    legPx,
    dimensions,
  };
}

/** The joint seen along its edge, where the blade's tilt from square shows in full; the stave is broken off behind it. */
export function JointDetail({ piece, sheet, lettering }: { piece: Piece; sheet: JointSheet; lettering: Lettering }) {
  const { textPx } = lettering;
  const { outer, inner, brokenX, legPx } = sheet;
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const { bevelRad } = ringGeometry(piece);
  const middleY = inner.y / 2;
  const jag = 0.4 * textPx;
  const broken: Point[] = [
    { x: brokenX, y: inner.y },
    { x: brokenX, y: middleY + jag },
    { x: brokenX - jag, y: middleY + jag / 2 },
    { x: brokenX + jag, y: middleY - jag / 2 },
    { x: brokenX, y: middleY - jag },
    { x: brokenX, y: 0 },
  ];
  const beyond: Point = { x: outer.x + legPx * Math.sin(bevelRad), y: -legPx * Math.cos(bevelRad) };
  return (
    <>
      <Hatch id={hatchId} />
      <path fill={hatchFill(hatchId)} d={closedPath([outer, inner, ...broken])} />
      <path className="drawing-thin" d={openPath(broken)} />
      <path
        className="drawing-outline"
        d={openPath([{ x: brokenX, y: 0 }, outer, inner, { x: brokenX, y: inner.y }])}
      />
      <line className="dimension-extension" x1={outer.x} y1={outer.y} x2={beyond.x} y2={beyond.y} />
      <AngleFromUpright at={outer} turnRad={bevelRad} legPx={legPx} text={tiltText(piece, lettering)} textPx={textPx} />
      {sheet.dimensions.map((placed) => (
        <DimensionLine key={`${placed.at.x} ${placed.at.y}`} placed={placed} textPx={textPx} />
      ))}
      <text
        className="drawing-text drawing-text-soft"
        fontSize={textPx}
        textAnchor="middle"
        x={sheet.widthPx / 2}
        y={sheet.bottomPx - 0.5 * textPx}
      >
        {CAPTION}
      </text>
    </>
  );
}
