import type { Point } from './ring-outline';

/** The one sign for wood: thin lines across a sawn end. Filled into a shape with `fill={hatchFill(id)}`. */
export function Hatch({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={id} width={5} height={5} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="drawing-hatch" x1={2.5} y1={0} x2={2.5} y2={5} />
      </pattern>
    </defs>
  );
}

export function hatchFill(id: string): string {
  return `url(#${id})`;
}

/** SVG path along the points. */
export function openPath(points: readonly Point[]): string {
  return `M${points.map((point) => `${point.x.toFixed(2)} ${point.y.toFixed(2)}`).join('L')}`;
}

/** SVG path of a closed outline. */
export function closedPath(points: readonly Point[]): string {
  return `${openPath(points)}Z`;
}
