import type { Point } from './ring-outline';

interface AngleMarkProps {
  /** The corner, px. */
  at: Point;
  /** Directions of the two legs, radians from x towards y down the sheet, less than a half turn apart. */
  fromRad: number;
  toRad: number;
  radiusPx: number;
}

/** The arc between two legs of an angle, with a tick at either end. */
export function AngleMark({ at, fromRad, toRad, radiusPx }: AngleMarkProps) {
  const on = (angle: number): Point => ({ x: at.x + radiusPx * Math.cos(angle), y: at.y + radiusPx * Math.sin(angle) });
  const [start, end] = [on(fromRad), on(toRad)];
  const sweep = toRad > fromRad ? 1 : 0;
  return (
    <path
      className="dimension-line"
      fill="none"
      d={`M${start.x} ${start.y}A${radiusPx} ${radiusPx} 0 0 ${sweep} ${end.x} ${end.y}`}
    />
  );
}
