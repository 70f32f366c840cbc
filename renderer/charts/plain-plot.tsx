/** Two axes with their ticks, and whatever is drawn between them: for charts of few marks. */
import type { ReactNode } from 'react';
import { CartesianGrid, ComposedChart, XAxis, YAxis } from 'recharts';
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

/** The part that both axes share. */
function axisProps({ min, max, ticks, format }: Axis, fontSize: number) {
  return {
    type: 'number' as const,
    domain: [min, max] as const,
    ticks: [...ticks],
    tickFormatter: format,
    interval: 0 as const,
    tickLine: false,
    stroke: 'var(--edge)',
    tick: { fontSize, fill: 'var(--ink-soft)' },
  };
}

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
        <div role="img" aria-label={summary}>
          <ComposedChart
            width={widthPx}
            height={heightRem * textPx}
            data={[
              { x: x.min, y: foot },
              { x: x.max, y: head },
            ]}
            margin={{ top: topPx, right: RIGHT_REM * textPx, bottom: 0, left: y ? 0 : leftPx }}
            accessibilityLayer={false}
          >
            {y && <CartesianGrid stroke="var(--hairline)" vertical={false} />}
            <XAxis dataKey="x" {...axisProps(x, fontSize)} height={BOTTOM_REM * textPx} tickMargin={0.4 * fontSize} />
            {y && <YAxis dataKey="y" {...axisProps(y, fontSize)} width={leftPx} />}
            <g transform={`translate(${leftPx} ${topPx})`} fontSize={fontSize}>
              {y && (
                <text className="axis-text" x={-leftPx} y={-0.8 * fontSize}>
                  {y.name}
                </text>
              )}
              <text className="axis-text" x={plotWidthPx} y={plotHeightPx + 2.9 * fontSize} textAnchor="end">
                {x.name}
              </text>
              {children(place)}
            </g>
          </ComposedChart>
        </div>
      )}
    </div>
  );
}
