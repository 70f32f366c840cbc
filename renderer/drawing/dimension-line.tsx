import { FOOT, type PlacedDimension } from './dimension-placement';
import type { Point } from './ring-outline';

/** A measured length with extension lines, ticks and its figure. */
export function DimensionLine({ placed, textPx }: { placed: PlacedDimension; textPx: number }) {
  const { extensions, line, ticks, words, at, angleDeg } = placed;
  return (
    <g className="dimension">
      {extensions.map((ends) => (
        <Stroke key={`${ends[0].x} ${ends[0].y}`} className="dimension-extension" ends={ends} />
      ))}
      <Stroke className="dimension-line" ends={line} />
      {ticks.map((ends) => (
        <Stroke key={`${ends[0].x} ${ends[0].y}`} className="dimension-tick" ends={ends} />
      ))}
      <text
        className="drawing-text"
        fontSize={textPx}
        textAnchor="middle"
        transform={`translate(${at.x} ${at.y}) rotate(${angleDeg}) translate(0 ${-FOOT * textPx})`}
      >
        {words}
      </text>
    </g>
  );
}

/** A straight line of the drawing. */
export function Stroke({ className, ends: [a, b] }: { className: string; ends: [Point, Point] }) {
  return <line className={className} x1={a.x} y1={a.y} x2={b.x} y2={b.y} />;
}
