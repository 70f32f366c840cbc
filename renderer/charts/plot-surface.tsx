/** The axes of a plot, drawn by recharts, with marks of our own between them. */
import { createContext, memo, type ReactNode, use } from 'react';
import { CartesianGrid, ComposedChart, XAxis, YAxis } from 'recharts';
import type { EvenScale } from './even-scale';

/** The size of the words along an axis. */
export const TICK_TEXT_REM = 0.8125;

/** What the ticks along the foot take. */
export const TICKS_REM = 1.5;

export interface Axis extends Omit<EvenScale, 'ticks'> {
  ticks: readonly number[];
  format: (value: number) => string;
}

/** The whole drawing, and what it leaves free about the plot, px. */
export interface PlotRoom {
  widthPx: number;
  heightPx: number;
  leftPx: number;
  rightPx: number;
  topPx: number;
  /** For the ticks along the foot; 0 where there are none. */
  bottomPx: number;
  /** Of the ticks. */
  fontPx: number;
}

interface PlotAxesProps {
  x: Axis;
  /** Left out where height measures nothing. */
  y?: Axis | undefined;
  room: PlotRoom;
}

interface PlotSurfaceProps extends PlotAxesProps {
  /** SVG, whose 0 and 0 is the upper left corner of the plot. */
  children: ReactNode;
}

export function PlotSurface({ x, y, room, children }: PlotSurfaceProps) {
  return (
    <Marks value={<g transform={`translate(${room.leftPx} ${room.topPx})`}>{children}</g>}>
      <PlotAxes x={x} y={y} room={room} />
    </Marks>
  );
}

const Marks = createContext<ReactNode>(null);

function MarksHere() {
  return use(Marks);
}

/** The part that both axes share. */
function axisProps({ min, max, ticks, format }: Axis, fontPx: number) {
  return {
    type: 'number' as const,
    domain: [min, max] as const,
    ticks: [...ticks],
    tickFormatter: format,
    interval: 0 as const,
    tickLine: false,
    stroke: 'var(--edge)',
    tick: { fontSize: fontPx, fill: 'var(--ink-soft)' },
  };
}

function isSameAxis(a: Axis | undefined, b: Axis | undefined): boolean {
  if (!a || !b) return a === b;
  const isSameTick = (tick: number, i: number): boolean => tick === b.ticks[i] && a.format(tick) === b.format(tick);
  return a.min === b.min && a.max === b.max && a.ticks.length === b.ticks.length && a.ticks.every(isSameTick);
}

function isSameRoom(a: PlotRoom, b: PlotRoom): boolean {
  return (Object.keys(a) as (keyof PlotRoom)[]).every((part) => a[part] === b[part]);
}

/** Drawn anew only when axes or room change: marks move with the pointer, and these take longer to draw. */
const PlotAxes = memo(
  function PlotAxes({ x, y, room }: PlotAxesProps) {
    const { widthPx, heightPx, leftPx, rightPx, topPx, bottomPx, fontPx } = room;
    const foot = axisProps(x, fontPx);
    return (
      <ComposedChart
        width={widthPx}
        height={heightPx}
        data={[
          { x: x.min, y: y?.min ?? 0 },
          { x: x.max, y: y?.max ?? 1 },
        ]}
        margin={{ top: topPx, right: rightPx, bottom: 0, left: y ? 0 : leftPx }}
        accessibilityLayer={false}
      >
        {y && <CartesianGrid stroke="var(--hairline)" vertical={false} />}
        <XAxis
          dataKey="x"
          {...foot}
          tick={bottomPx > 0 && foot.tick}
          // Without height not even its line is drawn.
          height={Math.max(1, bottomPx)}
          tickMargin={0.4 * fontPx}
        />
        {y && <YAxis dataKey="y" {...axisProps(y, fontPx)} width={leftPx} />}
        <MarksHere />
      </ComposedChart>
    );
  },
  (before, now) => isSameRoom(before.room, now.room) && isSameAxis(before.x, now.x) && isSameAxis(before.y, now.y),
);
