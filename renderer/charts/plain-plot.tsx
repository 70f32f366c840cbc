/** Two axes with their ticks and names, and whatever is drawn between them: for charts of few marks. */
import type { ReactNode } from 'react';
import './plain-plot.css';
import { type Axis, type PlotRoom, PlotSurface, TICK_TEXT_REM } from './plot-surface';
import { useSize } from './use-size';

export interface NamedAxis extends Axis {
  /** What is measured, with its unit. */
  name: string;
}

export interface PlotPlace {
  x: (value: number) => number;
  y: (value: number) => number;
  /** Of the plot between the axes. */
  widthPx: number;
  heightPx: number;
  textPx: number;
}

interface PlainPlotProps {
  x: NamedAxis;
  /** Left out where height measures nothing; y then runs from 0 at the foot to 1. */
  y?: NamedAxis;
  heightRem: number;
  /** What the chart shows, for those who do not see it. */
  summary: string;
  children: (place: PlotPlace) => ReactNode;
}

const LEFT_REM = 3.5;
const BARE_LEFT_REM = 1.25;
const RIGHT_REM = 1.25;
const TOP_REM = 1.9;
const BOTTOM_REM = 3;

export function PlainPlot({ x, y, heightRem, summary, children }: PlainPlotProps) {
  const [box, { widthPx, textPx }] = useSize<HTMLDivElement>();
  const fontPx = TICK_TEXT_REM * textPx;
  const room: PlotRoom = {
    widthPx,
    heightPx: heightRem * textPx,
    leftPx: (y ? LEFT_REM : BARE_LEFT_REM) * textPx,
    rightPx: RIGHT_REM * textPx,
    topPx: TOP_REM * textPx,
    bottomPx: BOTTOM_REM * textPx,
    fontPx,
  };
  const [foot, head] = y ? [y.min, y.max] : [0, 1];
  const plotWidthPx = Math.max(0, widthPx - room.leftPx - room.rightPx);
  const plotHeightPx = room.heightPx - room.topPx - room.bottomPx;
  const place: PlotPlace = {
    x: (value) => ((value - x.min) / (x.max - x.min)) * plotWidthPx,
    y: (value) => (1 - (value - foot) / (head - foot)) * plotHeightPx,
    widthPx: plotWidthPx,
    heightPx: plotHeightPx,
    textPx: fontPx,
  };
  return (
    <div ref={box} className="plain-plot" style={{ height: room.heightPx }}>
      {plotWidthPx > 0 && (
        <div role="img" aria-label={summary}>
          <PlotSurface x={x} y={y} room={room}>
            <g fontSize={fontPx}>
              {y && (
                <text className="axis-text" x={-room.leftPx} y={-0.8 * fontPx}>
                  {y.name}
                </text>
              )}
              <text className="axis-text" x={plotWidthPx} y={plotHeightPx + 2.9 * fontPx} textAnchor="end">
                {x.name}
              </text>
              {children(place)}
            </g>
          </PlotSurface>
        </div>
      )}
    </div>
  );
}
