/** Two axes with their ticks, and whatever is drawn between them: for charts of few marks. */
import type { ReactNode } from 'react';
import type { EvenScale } from './even-scale';
import './plain-plot.css';
import { useSize } from './use-size';

export interface Axis extends Omit<EvenScale, 'ticks'> {
  ticks: readonly number[];
  format: (value: number) => string;
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
  x: Axis;
  /** Left out where height measures nothing; y then runs from 0 at the foot to 1. */
  y?: Axis;
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
const TEXT_REM = 0.8125;

export function PlainPlot({ x, y, heightRem, summary, children }: PlainPlotProps) {
  const [box, { widthPx, textPx }] = useSize<HTMLDivElement>();
  const [leftPx, topPx] = [(y ? LEFT_REM : BARE_LEFT_REM) * textPx, TOP_REM * textPx];
  const [foot, head] = y ? [y.min, y.max] : [0, 1];
  const plotWidthPx = Math.max(0, widthPx - leftPx - RIGHT_REM * textPx);
  const plotHeightPx = (heightRem - TOP_REM - BOTTOM_REM) * textPx;
  const fontSize = TEXT_REM * textPx;
  const place: PlotPlace = {
    x: (value) => ((value - x.min) / (x.max - x.min)) * plotWidthPx,
    y: (value) => (1 - (value - foot) / (head - foot)) * plotHeightPx,
    widthPx: plotWidthPx,
    heightPx: plotHeightPx,
    textPx: fontSize,
  };
  return (
    <div ref={box} className="plain-plot" style={{ height: heightRem * textPx }}>
      {plotWidthPx > 0 && (
        <svg role="img" aria-label={summary} width={widthPx} height={heightRem * textPx}>
          <g transform={`translate(${leftPx} ${topPx})`} fontSize={fontSize}>
            {y?.ticks.map((tick) => (
              <g key={tick} transform={`translate(0 ${place.y(tick)})`}>
                <path className="grid-line" d={`M0 0H${plotWidthPx}`} />
                <text className="axis-text" x={-0.5 * fontSize} dy="0.35em" textAnchor="end">
                  {y.format(tick)}
                </text>
              </g>
            ))}
            {y && (
              <text className="axis-text" x={-leftPx} y={-0.8 * fontSize}>
                {y.name}
              </text>
            )}
            {x.ticks.map((tick) => (
              <text
                key={tick}
                className="axis-text"
                x={place.x(tick)}
                y={plotHeightPx + 1.4 * fontSize}
                textAnchor="middle"
              >
                {x.format(tick)}
              </text>
            ))}
            <text className="axis-text" x={plotWidthPx} y={plotHeightPx + 2.9 * fontSize} textAnchor="end">
              {x.name}
            </text>
            {children(place)}
            <path className="base-line" d={`M0 ${y ? 0 : plotHeightPx}V${plotHeightPx}H${plotWidthPx}`} />
          </g>
        </svg>
      )}
    </div>
  );
}
