/** Two axes with their ticks, and whatever is drawn between them: for charts of few marks. */
import { createContext, memo, type ReactNode, use } from 'react';
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

const Marks = createContext<ReactNode>(null);

interface FrameProps {
  x: Axis;
  y: Axis | undefined;
  /** Of the whole drawing. */
  widthPx: number;
  heightPx: number;
  /** One rem. */
  textPx: number;
}

function isSameAxis(a: Axis | undefined, b: Axis | undefined): boolean {
  if (!a || !b) return a === b;
  const isSameTick = (tick: number, i: number): boolean => tick === b.ticks[i] && a.format(tick) === b.format(tick);
  return a.min === b.min && a.max === b.max && a.ticks.length === b.ticks.length && a.ticks.every(isSameTick);
}

/** The axes and the grid, drawn anew only when they change: marks move with the pointer, and these take longer to draw. */
const Frame = memo(
  function Frame({ x, y, widthPx, heightPx, textPx }: FrameProps) {
    const leftPx = (y ? LEFT_REM : BARE_LEFT_REM) * textPx;
    const fontSize = TEXT_REM * textPx;
    return (
      <ComposedChart
        width={widthPx}
        height={heightPx}
        data={[
          { x: x.min, y: y?.min ?? 0 },
          { x: x.max, y: y?.max ?? 1 },
        ]}
        margin={{ top: TOP_REM * textPx, right: RIGHT_REM * textPx, bottom: 0, left: y ? 0 : leftPx }}
        accessibilityLayer={false}
      >
        {y && <CartesianGrid stroke="var(--hairline)" vertical={false} />}
        <XAxis dataKey="x" {...axisProps(x, fontSize)} height={BOTTOM_REM * textPx} tickMargin={0.4 * fontSize} />
        {y && <YAxis dataKey="y" {...axisProps(y, fontSize)} width={leftPx} />}
        <MarksHere />
      </ComposedChart>
    );
  },
  (before, now) =>
    before.widthPx === now.widthPx &&
    before.heightPx === now.heightPx &&
    before.textPx === now.textPx &&
    isSameAxis(before.x, now.x) &&
    isSameAxis(before.y, now.y),
);

function MarksHere() {
  return use(Marks);
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
  const marks = (
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
  );
  return (
    <div ref={box} className="plain-plot" style={{ height: heightRem * textPx }}>
      {plotWidthPx > 0 && (
        <div role="img" aria-label={summary}>
          <Marks value={marks}>
            <Frame x={x} y={y} widthPx={widthPx} heightPx={heightRem * textPx} textPx={textPx} />
          </Marks>
        </div>
      )}
    </div>
  );
}
