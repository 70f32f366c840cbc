/** One row a method on a shared scale of gaps: what has no gap stands before the scale, what is beyond it after it. */
import type { ReactNode } from 'react';
import { MethodLabel } from '../app/method-mark';
import { unbroken } from '../app/unbroken';
import type { GapScale } from './gap-scale';
import { useSize } from './use-size';

export interface GapRow {
  /** Place of the method in the project. */
  index: number;
  name: string;
  isFresh: boolean;
  /** What the row shows, in a sentence. */
  sentence: string;
}

/** Where a row is drawn: x = 0 is where the scale begins, y = 0 the row's top. */
export interface RowPlace {
  /** The scale's length. */
  widthPx: number;
  heightPx: number;
  /** Room before the scale, and as much beyond it. */
  besidePx: number;
  textPx: number;
}

interface GapRowsProps<Row extends GapRow> {
  rows: readonly Row[];
  scale: GapScale;
  limitMm: number;
  formatGap: (mm: number) => string;
  /** Gives how to draw each row, once it is known how much room there is. */
  draw: (place: RowPlace) => (row: Row) => ReactNode;
}

/** A gap below this rounds to nothing. */
export const NO_GAP_MM = 0.005;
const HEIGHT_REM = 6;
const AXIS_REM = 3.25;

export function GapRows<Row extends GapRow>({ rows, scale, limitMm, formatGap, draw }: GapRowsProps<Row>) {
  const [box, { widthPx, textPx }] = useSize<HTMLDivElement>();
  const besidePx = AXIS_REM * textPx;
  const place: RowPlace = {
    widthPx: Math.max(0, widthPx - besidePx),
    heightPx: HEIGHT_REM * textPx,
    besidePx,
    textPx,
  };
  const drawRow = place.widthPx > 0 ? draw(place) : () => null;
  const limitX = limitMm <= scale.maxMm ? (limitMm / scale.maxMm) * place.widthPx : null;
  return (
    <div className="dot-rows">
      {/* Measures the width that every row's drawing has. */}
      <div className="chart-grid dot-ruler">
        <div ref={box} />
      </div>
      {rows.map((row) => (
        <div key={row.name} className="chart-grid dot-row">
          <svg
            className={row.isFresh ? 'dots' : 'dots softened'}
            role="img"
            aria-label={`${row.name}: ${row.sentence}`}
            width={widthPx}
            height={place.heightPx}
          >
            <g transform={`translate(${besidePx} 0)`}>
              <path className="base-line" d={`M0 0V${place.heightPx - 0.5}H${place.widthPx}`} />
              {limitX !== null && <path className="limit-line" d={`M${limitX} 0V${place.heightPx}`} />}
              {drawRow(row)}
            </g>
          </svg>
          <div className="dot-words">
            <MethodLabel index={row.index} name={row.name} />
            <p className="dot-sentence">{unbroken(row.sentence)}</p>
          </div>
        </div>
      ))}
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
