/** Fifty dots a method: each dot stands for one ring in fifty, at its worst gap. Dots over the limit are hollow. */
import { MethodLabel, markOf } from '../app/method-mark';
import { unbroken } from '../app/unbroken';
import type { GapScale } from './gap-scale';
import { BESIDE_GAP, type Dot, dotSize, packDots, stackDots } from './stack-dots';
import { useSize } from './use-size';

export const DOTS = 50;

export interface DotRow {
  /** Place of the method in the project. */
  index: number;
  name: string;
  isFresh: boolean;
  /** Ascending worst gaps, mm. */
  gapsMm: readonly number[];
  /** How many stay within the limit, in a sentence. */
  sentence: string;
}

interface DotRowsProps {
  rows: readonly DotRow[];
  scale: GapScale;
  limitMm: number;
  formatGap: (mm: number) => string;
}

/** A gap below this rounds to nothing; such dots stand in a block of their own before the scale. */
const NO_GAP_MM = 0.005;
const HEIGHT_REM = 6;
const MOST_DOT_REM = 0.8;
const AXIS_REM = 3.25;
/** Of a dot's place, left free so that neighbours do not touch. */
const FREE_SHARE = 0.14;
const RING_PX = 1.5;

function isTight(gapMm: number): boolean {
  return gapMm < NO_GAP_MM;
}

export function DotRows({ rows, scale, limitMm, formatGap }: DotRowsProps) {
  const [box, { widthPx, textPx }] = useSize<HTMLDivElement>();
  const axisPx = AXIS_REM * textPx;
  const plotPx = Math.max(0, widthPx - axisPx);
  const heightPx = HEIGHT_REM * textPx;
  const onScale = rows.map(({ gapsMm }) => gapsMm.filter((gap) => !isTight(gap) && gap <= scale.maxMm));
  const packed = Math.max(
    ...rows.flatMap(({ gapsMm }) => [gapsMm.filter(isTight).length, gapsMm.filter((gap) => gap > scale.maxMm).length]),
  );
  const room = { widthPx: plotPx, heightPx, besidePx: axisPx, mostPx: MOST_DOT_REM * textPx };
  const dotPx = plotPx > 0 ? dotSize(onScale, packed, scale.maxMm, room) : 0;
  const levels = Math.max(1, Math.floor(heightPx / Math.max(dotPx, 1)));
  const limitX = limitMm <= scale.maxMm ? (limitMm / scale.maxMm) * plotPx : null;
  return (
    <div className="dot-rows">
      {/* Measures the width that every row's drawing has. */}
      <div className="chart-grid dot-ruler">
        <div ref={box} />
      </div>
      {rows.map((row, i) => {
        const tight = row.gapsMm.filter(isTight);
        const beyond = row.gapsMm.filter((gap) => gap > scale.maxMm);
        const dots =
          plotPx > 0
            ? [
                ...packDots(tight, levels).map((dot) => ({ ...dot, x: -(dot.x + 0.5 + BESIDE_GAP) * dotPx })),
                ...stackDots(onScale[i] ?? [], scale.maxMm, plotPx, dotPx),
                ...packDots(beyond, levels).map((dot) => ({ ...dot, x: plotPx + (dot.x + 0.5 + BESIDE_GAP) * dotPx })),
              ]
            : [];
        return (
          <div key={row.name} className="chart-grid dot-row">
            <svg
              className={row.isFresh ? 'dots' : 'dots softened'}
              role="img"
              aria-label={`${row.name}: ${row.sentence}`}
              width={widthPx}
              height={heightPx}
            >
              <g transform={`translate(${axisPx} 0)`}>
                <path className="base-line" d={`M0 0V${heightPx - 0.5}H${plotPx}`} />
                {limitX !== null && <path className="limit-line" d={`M${limitX} 0V${heightPx}`} />}
                <Dots
                  dots={dots}
                  limitMm={limitMm}
                  colour={markOf(row.index).colour}
                  dotPx={dotPx}
                  heightPx={heightPx}
                />
              </g>
            </svg>
            <div className="dot-words">
              <MethodLabel index={row.index} name={row.name} />
              <p className="dot-sentence">{unbroken(row.sentence)}</p>
            </div>
          </div>
        );
      })}
      <div className="chart-grid dot-axis" aria-hidden="true">
        <div className="tick-labels">
          <span className="no-gap-label">no gap</span>
          {scale.ticksMm.map((tick) => (
            <span key={tick} style={{ insetInlineStart: `${(tick / scale.maxMm) * 100}%` }}>
              {formatGap(tick)}
            </span>
          ))}
        </div>
        <span className="beyond-label">over</span>
      </div>
    </div>
  );
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
  return dots.map(({ x, level, valueMm }) => (
    <circle
      key={`${x} ${level}`}
      cx={x}
      cy={heightPx - (level + 0.5) * dotPx - 1}
      {...(valueMm <= limitMm
        ? { r: radius, fill: colour }
        : { r: Math.max(0, radius - RING_PX / 2), className: 'fails' })}
    />
  ));
}
