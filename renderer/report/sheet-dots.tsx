/** Fifty dots a method as plain SVG, lettering and all, that looks the same on the screen and on paper. */

import { NO_GAP_MM } from '../../sim/geometry/thresholds';
import type { MethodResult } from '../../sim/run/prediction';
import { quantileDots } from '../../sim/statistics/dots';
import { dotsText } from '../../sim/wording/explain';
import { limitInSentence } from '../../sim/wording/figures';
import { DOTS } from '../charts/dot-rows';
import { gapScale } from '../charts/gap-scale';
import { BESIDE_GAP, dotSize, packDots, stackDots } from '../charts/stack-dots';
import type { Display } from '../inputs/field-props';
import { markOf } from '../parts/method-mark';
import { SheetTicks } from './sheet-ticks';

interface SheetDotsProps {
  result: MethodResult;
  /** Place of the method in the project. */
  index: number;
  limitMm: number;
  display: Display;
  /** End of the scale at least, mm, so that several drawings can have one scale. */
  reachMm: number;
  widthPx: number;
  heightPx: number;
}

const MOST_DOT_PX = 20;
const FREE_SHARE = 0.14;
const RING_PX = 1.5;
const BESIDE_PX = 64;
const TEXT_PX = 12;
const AXIS_PX = 22;
const LIMIT_PX = 18;

/** How far the scale goes beyond the limit, times the limit. */
const ROOM = 2.2;

/** The end of a scale for these methods: some room on both sides of the limit; one that is far off may leave it. */
export function dotsReachMm(results: readonly MethodResult[], limitMm: number): number {
  return Math.max(ROOM * limitMm, Math.min(...results.map(({ prediction }) => prediction.showGapMm.p95)));
}

const dotsOf = ({ sample }: MethodResult): number[] => [...quantileDots(sample.showGapMm, DOTS)];

export function SheetDots({ result, index, limitMm, display, reachMm, widthPx, heightPx }: SheetDotsProps) {
  const gapsMm = dotsOf(result);
  const scale = gapScale(reachMm, limitMm, display);
  const plotPx = widthPx - 2 * BESIDE_PX;
  const stackPx = heightPx - AXIS_PX - LIMIT_PX;
  const tight = gapsMm.filter((gap) => gap < NO_GAP_MM);
  const beyond = gapsMm.filter((gap) => gap > scale.maxMm);
  const onScale = gapsMm.filter((gap) => gap >= NO_GAP_MM && gap <= scale.maxMm);
  const room = { widthPx: plotPx, heightPx: stackPx, besidePx: BESIDE_PX, mostPx: MOST_DOT_PX };
  const dotPx = dotSize([onScale], Math.max(tight.length, beyond.length), scale.maxMm, room);
  const levels = Math.max(1, Math.floor(stackPx / dotPx));
  const dots = [
    ...packDots(tight, levels).map((dot) => ({ ...dot, x: -(dot.x + 0.5 + BESIDE_GAP) * dotPx })),
    ...stackDots(onScale, scale.maxMm, plotPx, dotPx),
    ...packDots(beyond, levels).map((dot) => ({ ...dot, x: plotPx + (dot.x + 0.5 + BESIDE_GAP) * dotPx })),
  ];
  const baseY = LIMIT_PX + stackPx;
  const limitX = (limitMm / scale.maxMm) * plotPx;
  const radius = (dotPx * (1 - FREE_SHARE)) / 2;
  const { colour } = markOf(index);
  const unit = display === 'metric' ? 'mm' : 'in';
  return (
    <svg
      className="sheet-chart"
      role="img"
      aria-label={`${result.prediction.name}: ${dotsText(gapsMm, limitMm, display)}`}
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      fontSize={TEXT_PX}
    >
      <g transform={`translate(${BESIDE_PX} 0)`}>
        <path className="chart-base" d={`M0 ${baseY}H${plotPx}`} />
        <path className="chart-limit" d={`M${limitX} ${LIMIT_PX - 3}V${baseY}`} />
        <text className="chart-limit-text" textAnchor="middle" x={limitX} y={LIMIT_PX - 7}>
          limit {limitInSentence(limitMm, display)}
        </text>
        {dots.map(({ x, level, valueMm }) => (
          <circle
            key={`${x} ${level}`}
            cx={x}
            cy={baseY - (level + 0.5) * dotPx - 1}
            {...(valueMm <= limitMm
              ? { r: radius, fill: colour }
              : { r: Math.max(0, radius - RING_PX / 2), className: 'chart-fails' })}
          />
        ))}
        <SheetTicks scale={scale} display={display} plotPx={plotPx} footPx={baseY} />
        <text className="chart-text" textAnchor="end" x={-12} y={baseY + 16}>
          no gap
        </text>
        <text className="chart-text" x={plotPx + 22} y={baseY + 16}>
          {beyond.length > 0 ? 'wider' : unit}
        </text>
      </g>
    </svg>
  );
}
