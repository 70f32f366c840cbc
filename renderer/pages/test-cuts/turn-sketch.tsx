/** Which way to turn, as a sketch: the square line, the setting now, and where it goes. Not to scale; the words say it all. */
import { RADIANS_PER_DEGREE } from '../../../sim/geometry/ring';

interface TurnSketchProps {
  /** The setting now, from square. */
  fromDeg: number;
  isMore: boolean;
}

const [WIDTH, HEIGHT] = [132, 104];
const FOOT = { x: 40, y: 92 };
const LEG = 72;
const ARROW = 56;
/** A turn that can be seen, in place of one that cannot. */
const SHOWN_TURN_DEG = 14;
const [LEAST_DEG, MOST_DEG] = [24, 52];

export function TurnSketch({ fromDeg, isMore }: TurnSketchProps) {
  const now = Math.min(MOST_DEG, Math.max(LEAST_DEG, fromDeg));
  const then = now + (isMore ? SHOWN_TURN_DEG : -SHOWN_TURN_DEG);
  const on = (deg: number, length: number) => {
    const turn = deg * RADIANS_PER_DEGREE;
    return `${(FOOT.x + length * Math.sin(turn)).toFixed(1)} ${(FOOT.y - length * Math.cos(turn)).toFixed(1)}`;
  };
  return (
    <svg className="turn-sketch" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" focusable="false">
      <path className="turn-table" d={`M8 ${FOOT.y}H${WIDTH - 4}`} />
      <path className="turn-square" d={`M${FOOT.x} ${FOOT.y}V${FOOT.y - LEG}`} />
      <path className="turn-now" d={`M${FOOT.x} ${FOOT.y}L${on(now, LEG)}`} />
      <path className="turn-then" d={`M${FOOT.x} ${FOOT.y}L${on(then, LEG)}`} />
      <path className="turn-then" d={`M${on(now, ARROW)}A${ARROW} ${ARROW} 0 0 ${isMore ? 1 : 0} ${on(then, ARROW)}`} />
      <path
        className="turn-head"
        d="M0 0L-7 -3.5L-7 3.5Z"
        transform={`translate(${on(then, ARROW)}) rotate(${isMore ? then : then + 180})`}
      />
      <text className="turn-text" x={FOOT.x} y={FOOT.y - LEG - 5} textAnchor="middle">
        square
      </text>
    </svg>
  );
}
