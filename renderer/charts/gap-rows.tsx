/** One row a method on a shared scale of gaps: what has no gap stands before the scale, what is beyond it after it. */
import type { ReactNode } from 'react';
import { lengthsOnOneLine } from '../parts/lengths-on-one-line';
import { MethodLabel } from '../parts/method-mark';
import type { GapScale } from './gap-scale';
import { type Axis, type PlotRoom, PlotSurface, TICK_TEXT_REM, TICKS_REM } from './plot-surface';
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
  const axis: Axis = { min: 0, max: scale.maxMm, ticks: scale.ticksMm, format: formatGap };
  const fontPx = TICK_TEXT_REM * textPx;
  const roomAbove = (bottomPx: number): PlotRoom => ({
    widthPx,
    heightPx: place.heightPx + bottomPx,
    leftPx: besidePx,
    rightPx: 0,
    topPx: 0,
    bottomPx,
    fontPx,
  });
  const limitX = limitMm <= scale.maxMm ? (limitMm / scale.maxMm) * place.widthPx : null;
  return (
    <div className="dot-rows">
      {/* Measures the width that every row's drawing has. */}
      <div className="chart-grid dot-ruler">
        <div ref={box} />
      </div>
      {rows.map((row, i) => (
        <div key={row.name} className="chart-grid dot-row">
          <div
            className={row.isFresh ? 'dots' : 'dots softened'}
            role="img"
            aria-label={`${row.name}: ${row.sentence}`}
          >
            {place.widthPx > 0 && (
              <PlotSurface x={axis} room={roomAbove(i === rows.length - 1 ? TICKS_REM * textPx : 0)}>
                <path className="base-line" d={`M0 0V${place.heightPx - 0.5}`} />
                {limitX !== null && <path className="limit-line" d={`M${limitX} 0V${place.heightPx}`} />}
                {drawRow(row)}
                {i === rows.length - 1 && <Beside {...place} fontPx={fontPx} last={formatGap(scale.maxMm)} />}
              </PlotSurface>
            )}
          </div>
          <div className="dot-words">
            <MethodLabel index={row.index} name={row.name} />
            <p className="dot-sentence">{lengthsOnOneLine(row.sentence)}</p>
          </div>
        </div>
      ))}
    </div>
  );
}

/** Of the letters' height: half a digit's width, and what keeps the words off the tick at the end of the scale. */
const HALF_DIGIT = 0.3;
const APART = 0.7;

/** What stands beside the scale. */
function Beside({ widthPx, heightPx, fontPx, last }: RowPlace & { fontPx: number; last: string }) {
  // On the line of the ticks, which stand as far below the axis.
  const y = heightPx + 6 + 1.11 * fontPx;
  return (
    <g className="axis-text" fontSize={fontPx}>
      <text x={-APART * fontPx} y={y} textAnchor="end">
        no gap
      </text>
      <text x={widthPx + (HALF_DIGIT * last.length + APART) * fontPx} y={y}>
        over
      </text>
    </g>
  );
}
