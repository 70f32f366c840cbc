/** How many rings of a hundred have their worst gap within each step of the scale. Bars over the limit are hollow. */
import { NO_GAP_MM } from '../../sim/geometry/thresholds';
import { type Histogram, histogram } from '../../sim/statistics/ecdf';
import { markOf } from '../parts/method-mark';
import { type GapRow, GapRows, type RowPlace } from './gap-rows';
import type { GapScale } from './gap-scale';
import { TICK_TEXT_REM } from './plot-surface';

/** The bars of one method, as shares of all its rings. */
export interface BarShares {
  noGap: number;
  /** Between the edges, those without a gap left out. */
  onScale: readonly number[];
  beyond: number;
}

export interface BarRow extends GapRow, BarShares {}

const FEWEST_BARS = 16;

/** Edges of the bars, mm: every tick of the scale is one. */
export function barEdges({ ticksMm, maxMm }: GapScale): number[] {
  const steps = ticksMm.length - 1;
  const bars = steps * Math.ceil(FEWEST_BARS / steps);
  return Array.from({ length: bars + 1 }, (_, i) => (maxMm * i) / bars);
}

/** @param gapsMm in any order, none below 0 */
export function barShares(gapsMm: ArrayLike<number>, edgesMm: readonly number[]): BarShares {
  const counted: Histogram = histogram(gapsMm, 0, edgesMm.at(-1) ?? 0, edgesMm.length - 1);
  let noGap = 0;
  for (let i = 0; i < gapsMm.length; i++) if ((gapsMm[i] ?? 0) < NO_GAP_MM) noGap++;
  const share = (count: number): number => count / Math.max(1, gapsMm.length);
  const onScale = Array.from(counted.counts, (count, bar) => share(bar === 0 ? count - noGap : count));
  return { noGap: share(noGap), onScale, beyond: share(counted.over) };
}

interface BarRowsProps {
  rows: readonly BarRow[];
  edgesMm: readonly number[];
  scale: GapScale;
  limitMm: number;
  formatGap: (mm: number) => string;
}

/** Of the row's height, above the highest bar. */
const HEADROOM_REM = 1.2;
const BESIDE_WIDTH_REM = 1.1;
const BESIDE_GAP_REM = 0.6;
const BETWEEN_PX = 1;

export function BarRows({ rows, edgesMm, scale, limitMm, formatGap }: BarRowsProps) {
  const most = Math.max(...rows.flatMap(({ onScale }) => onScale), Number.MIN_VALUE);
  const draw = ({ widthPx, heightPx, textPx }: RowPlace) => {
    const roomPx = heightPx - HEADROOM_REM * textPx;
    const x = (mm: number): number => (mm / scale.maxMm) * widthPx;
    const besidePx = BESIDE_WIDTH_REM * textPx;
    const awayPx = BESIDE_GAP_REM * textPx;
    return ({ index, noGap, onScale, beyond }: BarRow) => {
      const colour = markOf(index).colour;
      const bar = (fromPx: number, toPx: number, share: number, isOver: boolean) => (
        <Bar
          key={`${fromPx} ${isOver}`}
          {...{ fromPx, toPx, isOver, colour, footPx: heightPx }}
          heightPx={Math.min(1, share / most) * roomPx}
        />
      );
      const beside = (centrePx: number, share: number, isOver: boolean) =>
        share > 0 && (
          <>
            {bar(centrePx - besidePx / 2, centrePx + besidePx / 2, share, isOver)}
            <text
              className="axis-text"
              fontSize={TICK_TEXT_REM * textPx}
              textAnchor="middle"
              x={centrePx}
              y={heightPx - Math.min(1, share / most) * roomPx - 0.3 * textPx}
            >
              {inHundred(share)}
            </text>
          </>
        );
      return (
        <>
          {beside(-awayPx - besidePx / 2, noGap, false)}
          {onScale.map((share, i) => {
            const [from, to] = [edgesMm[i] ?? 0, edgesMm[i + 1] ?? 0];
            const within = Math.min(Math.max(limitMm, from), to);
            return [
              within > from && bar(x(from), x(within), share, false),
              within < to && bar(x(within), x(to), share, true),
            ];
          })}
          {beside(widthPx + awayPx + besidePx / 2, beyond, scale.maxMm >= limitMm)}
        </>
      );
    };
  };
  return <GapRows rows={rows} scale={scale} limitMm={limitMm} formatGap={formatGap} draw={draw} />;
}

/** "48", "under 1". */
export function inHundred(share: number): string {
  return share > 0 && share < 0.01 ? '<1' : `${Math.round(100 * share)}`;
}

interface BarProps {
  fromPx: number;
  toPx: number;
  footPx: number;
  heightPx: number;
  isOver: boolean;
  colour: string;
}

function Bar({ fromPx, toPx, footPx, heightPx, isOver, colour }: BarProps) {
  if (heightPx <= 0) return null;
  const line = isOver ? 1.5 : 0;
  return (
    <rect
      x={fromPx + BETWEEN_PX / 2 + line / 2}
      y={footPx - heightPx + line / 2}
      width={Math.max(0.5, toPx - fromPx - BETWEEN_PX - line)}
      height={Math.max(0, heightPx - line)}
      {...(isOver ? { className: 'fails' } : { fill: colour })}
    />
  );
}
