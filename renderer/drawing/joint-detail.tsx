import { useId } from 'react';
import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { AngleMark } from './angle-mark';
import { DimensionLine } from './dimension-line';
import { closedPath, Hatch, hatchFill, openPath } from './hatch';
import type { Lettering } from './lettering';
import type { Point } from './ring-outline';
import { jointSection } from './stave-outline';

export interface JointDetailSize {
  widthPx: number;
  heightPx: number;
  scale: number;
  /** The outer edge of the joint. */
  edge: Point;
  /** How far the piece of the stave reaches back from it. */
  backPx: number;
  /** Length of the two lines the tilt is shown between. */
  uprightPx: number;
}

const tiltText = (piece: Piece, { angle }: Lettering) => `tilt ${angle(ringGeometry(piece).bevelDeg)}`;

/** How large the joint is drawn, no wider than `mostPx`. */
export function jointDetailSize(piece: Piece, lettering: Lettering, mostPx: number): JointDetailSize {
  const { textPx, measure, figure } = lettering;
  const { bevelRad } = ringGeometry(piece);
  const uprightPx = 4 * textPx;
  const leftPx = 3.4 * textPx;
  const tailPx = 3 * textPx;
  const rightPx = Math.max(uprightPx * Math.sin(bevelRad) + measure(tiltText(piece, lettering)), 4 * textPx) + textPx;
  const roomPx = mostPx - leftPx - tailPx - rightPx;
  const deepPx = Math.min(7 * textPx, roomPx / Math.max(Math.tan(bevelRad), 0.01));
  const backPx = deepPx * Math.tan(bevelRad) + tailPx;
  // A length that does not fit beside the joint is written on, past its inner edge.
  const lengthTextPx = measure(figure(jointSection(piece).jointLengthMm)) + 1.5 * textPx;
  const isLengthBeyond = lengthTextPx > deepPx / Math.cos(bevelRad);
  const belowPx = Math.max(1.8 * textPx, isLengthBeyond ? lengthTextPx * Math.cos(bevelRad) + textPx : 0);
  return {
    widthPx: leftPx + backPx + rightPx,
    heightPx: uprightPx + 1.5 * textPx + deepPx + belowPx + 2.4 * textPx,
    scale: deepPx / piece.thicknessMm,
    edge: { x: leftPx + backPx, y: uprightPx + 1.5 * textPx },
    backPx,
    uprightPx,
  };
}

/** The joint seen along its edge, where the blade's tilt from square shows in full; the stave is broken off behind it. */
export function JointDetail({ piece, size, lettering }: { piece: Piece; size: JointDetailSize; lettering: Lettering }) {
  const { textPx, figure } = lettering;
  const { edge, backPx, uprightPx, scale } = size;
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const { bevelRad } = ringGeometry(piece);
  const section = jointSection(piece);
  const inner: Point = { x: edge.x + section.inner.x * scale, y: edge.y - section.inner.y * scale };
  const brokenX = edge.x - backPx;
  const middleY = (edge.y + inner.y) / 2;
  const jag = 0.4 * textPx;
  const broken: Point[] = [
    { x: brokenX, y: inner.y },
    { x: brokenX, y: middleY + jag },
    { x: brokenX - jag, y: middleY + jag / 2 },
    { x: brokenX + jag, y: middleY - jag / 2 },
    { x: brokenX, y: middleY - jag },
    { x: brokenX, y: edge.y },
  ];
  const beyond: Point = { x: edge.x + uprightPx * Math.sin(bevelRad), y: edge.y - uprightPx * Math.cos(bevelRad) };
  return (
    <>
      <Hatch id={hatchId} />
      <path fill={hatchFill(hatchId)} d={closedPath([edge, inner, ...broken])} />
      <path className="drawing-thin" d={openPath(broken)} />
      <path
        className="drawing-outline"
        d={openPath([{ x: brokenX, y: edge.y }, edge, inner, { x: brokenX, y: inner.y }])}
      />
      <line className="dimension-extension" x1={edge.x} y1={edge.y} x2={edge.x} y2={edge.y - uprightPx} />
      {bevelRad > 0 && (
        <>
          <line className="dimension-extension" x1={edge.x} y1={edge.y} x2={beyond.x} y2={beyond.y} />
          <AngleMark at={edge} fromRad={-Math.PI / 2} toRad={-Math.PI / 2 + bevelRad} radiusPx={0.8 * uprightPx} />
        </>
      )}
      <text className="drawing-text" fontSize={textPx} x={beyond.x + 0.4 * textPx} y={beyond.y + 0.4 * textPx}>
        {tiltText(piece, lettering)}
      </text>
      <DimensionLine
        from={{ x: brokenX, y: inner.y }}
        to={{ x: brokenX, y: edge.y }}
        offset={1.6 * textPx}
        figure={figure(piece.thicknessMm)}
        textPx={textPx}
      />
      <DimensionLine
        from={edge}
        to={inner}
        offset={1.8 * textPx}
        figure={figure(section.jointLengthMm)}
        textPx={textPx}
      />
      <text
        className="drawing-text drawing-text-soft"
        fontSize={textPx}
        textAnchor="middle"
        x={size.widthPx / 2}
        y={size.heightPx - 0.5 * textPx}
      >
        joint, along the edge
      </text>
    </>
  );
}
