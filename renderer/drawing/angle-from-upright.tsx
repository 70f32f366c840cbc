import type { Point } from './ring-outline';

interface AngleFromUprightProps {
  /** The corner, px. */
  at: Point;
  /** From straight up to the other leg, which the drawing has anyway; below 0 to the left, above 0 to the right. */
  turnRad: number;
  legPx: number;
  text: string;
  textPx: number;
}

/** An angle measured from a line straight up: the line, the arc, and the figure to the right of both. */
export function AngleFromUpright({ at, turnRad, legPx, text, textPx }: AngleFromUprightProps) {
  const arcPx = 0.8 * legPx;
  const on = (angle: number): Point => ({ x: at.x + arcPx * Math.sin(angle), y: at.y - arcPx * Math.cos(angle) });
  const [top, turned] = [on(0), on(turnRad)];
  const tip = Math.max(0, legPx * Math.sin(turnRad));
  return (
    <>
      <line className="dimension-extension" x1={at.x} y1={at.y} x2={at.x} y2={at.y - legPx} />
      <path
        className="drawing-arc"
        d={`M${top.x} ${top.y}A${arcPx} ${arcPx} 0 0 ${turnRad > 0 ? 1 : 0} ${turned.x} ${turned.y}`}
      />
      <text className="drawing-text" fontSize={textPx} x={at.x + tip + 0.4 * textPx} y={at.y - arcPx}>
        {text}
      </text>
    </>
  );
}
