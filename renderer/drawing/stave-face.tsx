import { ringGeometry } from '../../sim/geometry/ring';
import type { Piece } from '../../sim/project/document';
import { AngleMark } from './angle-mark';
import { DimensionLine } from './dimension-line';
import { closedPath } from './hatch';
import type { Lettering } from './lettering';
import type { Point } from './ring-outline';
import { staveFace } from './stave-outline';

const TALLEST_PX = 260;

export interface StaveFaceSize {
  widthPx: number;
  heightPx: number;
  scale: number;
  /** Middle of the wide end. */
  foot: Point;
}

const swingText = (piece: Piece, { angle }: Lettering) => `swing ${angle(ringGeometry(piece).crosscutDeg)}`;

/** How large the face comes out in the width there is, with the room for its sizes around it. */
export function staveFaceSize(piece: Piece, lettering: Lettering, widthPx: number): StaveFaceSize {
  const { textPx, measure, figure } = lettering;
  const { widths } = staveFace(piece);
  const isTapered = piece.slopeDeg > 0;
  const leftPx = 3.2 * textPx;
  const rightPx = isTapered ? measure(swingText(piece, lettering)) + textPx : textPx;
  const scale = Math.min((widthPx - leftPx - rightPx) / widths.wide, TALLEST_PX / piece.heightMm);
  const highPx = piece.heightMm * scale;
  const heightTextPx = measure(figure(piece.heightMm)) + 2 * textPx;
  const abovePx = Math.max(
    isTapered ? Math.max(3 * textPx, 7.5 * textPx - highPx) : textPx,
    heightTextPx > highPx ? heightTextPx : 0,
  );
  const footY = abovePx + piece.heightMm * scale;
  const footX = leftPx + (widthPx - leftPx - rightPx) / 2;
  return { widthPx, heightPx: footY + 4.4 * textPx, scale, foot: { x: footX, y: footY } };
}

/** The outer face with its widths, its height and how far the gauge swings from square. */
export function StaveFace({ piece, size, lettering }: { piece: Piece; size: StaveFaceSize; lettering: Lettering }) {
  const { textPx, figure } = lettering;
  const { wideLeft, wideRight, narrowRight, narrowLeft, widths } = staveFace(piece);
  const at = ({ x, y }: Point): Point => ({ x: size.foot.x + x * size.scale, y: size.foot.y - y * size.scale });
  const isTapered = piece.slopeDeg > 0;
  const rowPx = 1.8 * textPx;
  const middle = (sign: 1 | -1) => at({ x: (sign * widths.middle) / 2, y: piece.heightMm / 2 });
  const showsMiddle =
    piece.heightMm * size.scale > 3.5 * textPx &&
    lettering.measure(figure(widths.middle)) + textPx < widths.middle * size.scale;
  // A narrow end too short for its figure has it beside, above the words for the swing.
  const narrowFits = lettering.measure(figure(widths.narrow)) + textPx < widths.narrow * size.scale;
  const narrowOffsetPx = narrowFits ? textPx : Math.max(textPx, 5.6 * textPx - piece.heightMm * size.scale);
  const corner = at(wideRight);
  const uprightPx = 5 * textPx;
  const swing = Math.atan2(wideRight.x - narrowRight.x, piece.heightMm);
  return (
    <>
      <path className="drawing-outline" d={closedPath([wideLeft, wideRight, narrowRight, narrowLeft].map(at))} />
      <DimensionLine
        from={at({ x: wideLeft.x, y: 0 })}
        to={at({ x: wideLeft.x, y: piece.heightMm })}
        offset={rowPx}
        name="height"
        figure={figure(piece.heightMm)}
        textPx={textPx}
      />
      <DimensionLine
        from={at(wideRight)}
        to={at(wideLeft)}
        offset={rowPx}
        name={isTapered ? 'wide end' : 'width'}
        figure={figure(widths.wide)}
        textPx={textPx}
      />
      {isTapered && (
        <>
          <DimensionLine
            from={at(narrowLeft)}
            to={at(narrowRight)}
            offset={narrowOffsetPx}
            name="narrow end"
            figure={figure(widths.narrow)}
            textPx={textPx}
          />
          {showsMiddle && (
            <DimensionLine
              from={middle(-1)}
              to={middle(1)}
              name="middle"
              figure={figure(widths.middle)}
              textPx={textPx}
            />
          )}
          <line className="dimension-extension" x1={corner.x} y1={corner.y} x2={corner.x} y2={corner.y - uprightPx} />
          <AngleMark at={corner} fromRad={-Math.PI / 2 - swing} toRad={-Math.PI / 2} radiusPx={0.8 * uprightPx} />
          <text className="drawing-text" fontSize={textPx} x={corner.x + 0.4 * textPx} y={corner.y - 0.8 * uprightPx}>
            {swingText(piece, lettering)}
          </text>
        </>
      )}
      <text
        className="drawing-text drawing-text-soft"
        fontSize={textPx}
        textAnchor="middle"
        x={size.foot.x}
        y={size.heightPx - 0.5 * textPx}
      >
        outer face
      </text>
    </>
  );
}
