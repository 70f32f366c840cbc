/** The joints of all rings side by side: the gap that 95 of 100 rings stay under at each. */

import { jointFigures } from '../../../sim/export/joint-figures';
import { WILL_NOT_CLOSE_MM } from '../../../sim/geometry/thresholds';
import type { Assembly, Project } from '../../../sim/project/document';
import { capital, gapText, limitText } from '../../../sim/wording/figures';
import { betweenText, closingSentence, jointName, jointsSentence, jointTable } from '../../../sim/wording/joints';
import { ChartFrame } from '../../charts/chart-frame';
import { gapScale } from '../../charts/gap-scale';
import { PlainPlot, type PlotPlace } from '../../charts/plain-plot';
import { TextTableView } from '../../charts/text-table';
import { jointByKey } from '../../drawing/joint-keys';
import { formatLength, lengthUnit } from '../../inputs/format-quantity';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { markOf } from '../../parts/method-mark';
import type { MarkedJoint } from './ring-panel';

interface JointStripProps extends MarkedJoint {
  project: Project;
  assembly: Assembly;
  methodIndex: number;
  jointP95Mm: readonly number[];
  isFresh: boolean;
}

const HEIGHT_REM = 14;

/** Ticks that do not run into each other. */
function tickJoints(count: number): number[] {
  const step = count <= 16 ? 1 : count <= 30 ? 2 : 5;
  const ticks = Array.from({ length: count }, (_, joint) => joint + 1).filter((n) => step === 1 || n % step === 0);
  return ticks;
}

export function JointStrip(props: JointStripProps) {
  const { project, assembly, methodIndex, jointP95Mm, isFresh, marked, onMark } = props;
  const { display, limits } = project;
  const count = jointP95Mm.length;
  const limitMm = limits.showGapMm;
  const scale = gapScale(Math.max(...jointP95Mm) * 1.1, limitMm * 1.1, display);
  const said = `${jointsSentence(jointP95Mm, display)} ${closingSentence(assembly, count)}`;
  const y = {
    min: 0,
    max: scale.maxMm,
    ticks: scale.ticksMm,
    format: (mm: number) => formatLength(mm, display, { decimals: display === 'metric' ? 2 : 3 }),
    name: `Gap that shows, 95 of 100 rings under, ${lengthUnit(display)}`,
  };
  const x = { min: 0.4, max: count + 0.6, ticks: tickJoints(count), format: String, name: 'Joint' };
  return (
    <ChartFrame
      title="Which joints gape, over all rings"
      caption={lengthsOnOneLine(said)}
      table={<TextTableView table={jointTable(jointP95Mm, null, display)} marked={marked} onMark={onMark} />}
      figures={() => jointFigures(jointP95Mm, null, display)}
    >
      <div
        className={isFresh ? undefined : 'softened'}
        role="slider"
        tabIndex={0}
        aria-label="Joint that is marked"
        aria-valuemin={1}
        aria-valuemax={count}
        aria-valuenow={marked + 1}
        aria-valuetext={`${capital(jointName(marked))}, ${betweenText(marked, count)}: ${gapText(jointP95Mm[marked] ?? 0, display)}`}
        onKeyDown={(event) => {
          const next = jointByKey(event, marked, count);
          if (next !== null) onMark(next);
        }}
      >
        <PlainPlot x={x} y={y} heightRem={HEIGHT_REM} summary={said}>
          {(place) => (
            <Strip
              place={place}
              jointP95Mm={jointP95Mm}
              maxMm={scale.maxMm}
              limitMm={limitMm}
              limitText={limitText(limitMm, display)}
              colour={markOf(methodIndex).colour}
              marked={marked}
              onMark={onMark}
            />
          )}
        </PlainPlot>
      </div>
    </ChartFrame>
  );
}

interface StripProps extends MarkedJoint {
  place: PlotPlace;
  jointP95Mm: readonly number[];
  maxMm: number;
  limitMm: number;
  limitText: string;
  colour: string;
}

function Strip({ place, jointP95Mm, maxMm, limitMm, limitText, colour, marked, onMark }: StripProps) {
  const { x, y, heightPx, widthPx, textPx } = place;
  const at = jointP95Mm.map((mm, joint) => ({ x: x(joint + 1), y: y(Math.min(mm, maxMm)), mm }));
  const columnPx = widthPx / (jointP95Mm.length + 0.2);
  const radius = Math.min(0.4 * textPx, 0.35 * columnPx);
  const markedAt = at[marked];
  return (
    <>
      {markedAt && (
        <rect className="strip-mark" x={markedAt.x - columnPx / 2} y={0} width={columnPx} height={heightPx} rx={2} />
      )}
      <LimitMark place={place} limitMm={limitMm} limitText={limitText} />
      <path className="strip-line" stroke={colour} d={`M${at.map((point) => `${point.x} ${point.y}`).join('L')}`} />
      {at.map(({ x, y, mm }, joint) => (
        <circle
          // biome-ignore lint/suspicious/noArrayIndexKey: a joint is its place in the ring.
          key={joint}
          cx={x}
          cy={y}
          {...(mm > limitMm ? { r: radius - 0.75, className: 'fails over-paper' } : { r: radius, fill: colour })}
        />
      ))}
      {at.map(({ x }, joint) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: a joint is its place in the ring.
          key={joint}
          className="strip-reach"
          x={x - columnPx / 2}
          y={0}
          width={columnPx}
          height={heightPx}
          onPointerEnter={() => onMark(joint)}
        />
      ))}
      {Math.max(...jointP95Mm) > WILL_NOT_CLOSE_MM && (
        <text className="axis-text" x={widthPx} y={-0.8 * textPx} textAnchor="end">
          at the top: wider still
        </text>
      )}
    </>
  );
}

/** The limit as a line across a chart where it cannot be moved. */
export function LimitMark({ place, limitMm, limitText }: { place: PlotPlace; limitMm: number; limitText: string }) {
  const top = place.y(limitMm);
  return (
    <g className="limit-mark">
      <path d={`M0 ${top}H${place.widthPx}`} />
      <text x={0.5 * place.textPx} y={top - 0.4 * place.textPx}>
        limit {limitText}
      </text>
    </g>
  );
}
