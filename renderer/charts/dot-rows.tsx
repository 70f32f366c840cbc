/** Fifty dots a method: each dot stands for one ring in fifty, at its worst gap. Dots over the limit are hollow. */
import { NO_GAP_MM } from '../../sim/geometry/thresholds';
import { markOf } from '../parts/method-mark';
import { type GapRow, GapRows, type RowPlace } from './gap-rows';
import type { GapScale } from './gap-scale';
import { BESIDE_GAP, type Dot, dotSize, levelPx, packDots, stackDots } from './stack-dots';

export const DOTS = 50;

export interface DotRow extends GapRow {
  /** Ascending worst gaps, mm. */
  gapsMm: readonly number[];
}

interface DotRowsProps {
  rows: readonly DotRow[];
  scale: GapScale;
  limitMm: number;
  formatGap: (mm: number) => string;
}

const MOST_DOT_REM = 0.8;
/** Of a dot's place, left free so that neighbours do not touch. */
const FREE_SHARE = 0.14;
const RING_PX = 1.5;

export function DotRows({ rows, scale, limitMm, formatGap }: DotRowsProps) {
  const tight = (gapsMm: readonly number[]) => gapsMm.filter((gap) => gap < NO_GAP_MM);
  const onScale = (gapsMm: readonly number[]) => gapsMm.filter((gap) => gap >= NO_GAP_MM && gap <= scale.maxMm);
  const beyond = (gapsMm: readonly number[]) => gapsMm.filter((gap) => gap > scale.maxMm);
  const packed = Math.max(...rows.flatMap(({ gapsMm }) => [tight(gapsMm).length, beyond(gapsMm).length]));
  const draw = ({ widthPx, heightPx, besidePx, textPx }: RowPlace) => {
    const room = { widthPx, heightPx, besidePx, mostPx: MOST_DOT_REM * textPx };
    const plots = rows.map(({ gapsMm }) => onScale(gapsMm));
    const dotPx = dotSize(plots, packed, scale.maxMm, room);
    const levels = Math.max(1, Math.floor(heightPx / Math.max(dotPx, 1)));
    const beside = (gapsMm: readonly number[], x: (columns: number) => number): Dot[] =>
      packDots(gapsMm, levels).map((dot) => ({ ...dot, x: x((dot.x + 0.5 + BESIDE_GAP) * dotPx) }));
    return ({ index, gapsMm }: DotRow) => (
      <Dots
        dots={[
          ...beside(tight(gapsMm), (away) => -away),
          ...stackDots(onScale(gapsMm), scale.maxMm, widthPx, dotPx),
          ...beside(beyond(gapsMm), (away) => widthPx + away),
        ]}
        limitMm={limitMm}
        colour={markOf(index).colour}
        dotPx={dotPx}
        heightPx={heightPx}
      />
    );
  };
  return <GapRows rows={rows} scale={scale} limitMm={limitMm} formatGap={formatGap} draw={draw} />;
}

interface DotsProps {
  dots: readonly Dot[];
  limitMm: number;
  colour: string;
  dotPx: number;
  heightPx: number;
}

function Dots({ dots, limitMm, colour, dotPx, heightPx }: DotsProps) {
  const radius = (dotPx * (1 - FREE_SHARE)) / 2;
  const apartPx = levelPx(dots, dotPx, heightPx);
  return dots.map(({ x, level, valueMm }) => (
    <circle
      key={`${x} ${level}`}
      cx={x}
      cy={heightPx - 0.5 * dotPx - level * apartPx - 1}
      {...(valueMm <= limitMm
        ? { r: radius, fill: colour }
        : { r: Math.max(0, radius - RING_PX / 2), className: 'fails' })}
    />
  ));
}
