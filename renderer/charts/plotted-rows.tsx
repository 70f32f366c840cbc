/**
 * A list whose columns hold plots: the words of each row are HTML and may wrap, the marks of a column stand in one plot
 * that runs down all rows, at the height of the row's empty cell.
 */
import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import './plotted-rows.css';
import { type Axis, type PlotRoom, PlotSurface, TICK_TEXT_REM, TICKS_REM } from './plot-surface';
import { remPx } from './use-size';

/** Where the marks of one row go, px from the upper left corner of the plot. */
export interface RowBand {
  topPx: number;
  heightPx: number;
  middlePx: number;
}

export interface ColumnPlace {
  x: (value: number) => number;
  rows: readonly RowBand[];
  textPx: number;
}

export interface PlottedColumn {
  /** What `data-plot` of its cells says. */
  cells: string;
  /** Its ticks stand at the foot where the columns stand side by side; without ticks there is only the line. */
  axis: Axis;
  draw: (place: ColumnPlace) => ReactNode;
}

interface PlottedRowsProps {
  columns: readonly PlottedColumn[];
  /** The rows, with an empty cell `<span data-plot="…">` in each for every column. */
  children: ReactNode;
}

/** Empty cells of one column, px from the upper left corner of the list. */
interface Cells {
  leftPx: number;
  widthPx: number;
  rows: readonly RowBand[];
}

interface Measured {
  heightPx: number;
  textPx: number;
  byColumn: readonly Cells[];
}

/** For what stands at the ends of the scale. */
const BESIDE_REM = 1;

export function PlottedRows({ columns, children }: PlottedRowsProps) {
  const [list, measured] = useCells(columns.map(({ cells }) => cells));
  const { byColumn, heightPx, textPx } = measured;
  const isSideBySide = new Set(byColumn.map(({ leftPx }) => leftPx)).size === columns.length;
  const hasTicks = isSideBySide && columns.some(({ axis }) => axis.ticks.length > 0);
  return (
    <div className="plotted-rows" style={hasTicks ? { paddingBlockEnd: `${TICKS_REM}rem` } : undefined}>
      <div ref={list}>{children}</div>
      {columns.map(({ cells, axis, draw }, i) => {
        const { leftPx, widthPx, rows } = byColumn[i] ?? NO_CELLS;
        if (widthPx === 0) return null;
        const besidePx = BESIDE_REM * textPx;
        const bottomPx = hasTicks && axis.ticks.length > 0 ? TICKS_REM * textPx : 0;
        const room: PlotRoom = {
          widthPx: widthPx + 2 * besidePx,
          heightPx: heightPx + bottomPx,
          leftPx: besidePx,
          rightPx: besidePx,
          topPx: 0,
          bottomPx,
          fontPx: TICK_TEXT_REM * textPx,
        };
        const x = (value: number): number => ((value - axis.min) / (axis.max - axis.min)) * widthPx;
        return (
          <div key={cells} className="column-plot" aria-hidden="true" style={{ insetInlineStart: leftPx - besidePx }}>
            <PlotSurface x={axis} room={room}>
              {draw({ x, rows, textPx })}
            </PlotSurface>
          </div>
        );
      })}
    </div>
  );
}

const NO_CELLS: Cells = { leftPx: 0, widthPx: 0, rows: [] };
const NOT_MEASURED: Measured = { heightPx: 0, textPx: 16, byColumn: [] };

/** Measured anew when the list becomes larger or smaller, and when its rows change. */
function useCells(columns: readonly string[]): [React.RefObject<HTMLDivElement | null>, Measured] {
  const list = useRef<HTMLDivElement>(null);
  const [measured, setMeasured] = useState(NOT_MEASURED);
  const names = columns.join(' ');
  const measure = (): void => {
    const element = list.current;
    if (!element) return;
    const now = measuredIn(element, columns);
    setMeasured((before) => (JSON.stringify(before) === JSON.stringify(now) ? before : now));
  };
  useLayoutEffect(measure);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is measured is found anew each time.
  useLayoutEffect(() => {
    if (!list.current) return;
    const observer = new ResizeObserver(measure);
    observer.observe(list.current);
    return () => observer.disconnect();
  }, [names]);
  return [list, measured];
}

function measuredIn(list: HTMLElement, columns: readonly string[]): Measured {
  const whole = list.getBoundingClientRect();
  const byColumn = columns.map((column): Cells => {
    const boxes = [...list.querySelectorAll(`[data-plot="${column}"]`)].map((cell) => cell.getBoundingClientRect());
    const [first] = boxes;
    if (!first) return NO_CELLS;
    const rows = boxes.map(({ top, height }) => ({
      topPx: top - whole.top,
      heightPx: height,
      middlePx: top - whole.top + height / 2,
    }));
    return { leftPx: first.left - whole.left, widthPx: first.width, rows };
  });
  return { heightPx: whole.height, textPx: remPx(), byColumn };
}
