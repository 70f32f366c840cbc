/** The mouth at dry fit: how wide it is from ring to ring, and whether it tells how the ring will look. */

import { useMemo } from 'react';
import { mouthAgainstGap } from '../../../sim/decide/mouth-against-gap';
import { mouthAgainstGapFigures, mouthFigures } from '../../../sim/export/joint-figures';
import { MM_PER_INCH } from '../../../sim/geometry/thresholds';
import type { Method, Project } from '../../../sim/project/document';
import type { MethodResult } from '../../../sim/run/prediction';
import { quantileDots } from '../../../sim/statistics/dots';
import { sortedCopy } from '../../../sim/statistics/quantiles';
import { limitText } from '../../../sim/wording/figures';
import {
  mouthAgainstGapSentence,
  mouthAgainstGapTable,
  mouthMeaning,
  mouthSentence,
  mouthTable,
} from '../../../sim/wording/mouth';
import { ChartFrame } from '../../charts/chart-frame';
import { DOTS } from '../../charts/dot-rows';
import { type EvenScale, evenScale } from '../../charts/even-scale';
import { gapScale } from '../../charts/gap-scale';
import { type NamedAxis, PlainPlot, type PlotPlace } from '../../charts/plain-plot';
import { dotSize, stackDots } from '../../charts/stack-dots';
import { TextTableView } from '../../charts/text-table';
import { formatLength, lengthUnit } from '../../inputs/format-quantity';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { markOf } from '../../parts/method-mark';
import { LimitMark } from './joint-strip';

interface MouthPanelsProps {
  project: Project;
  method: Method;
  methodIndex: number;
  result: MethodResult;
  isFresh: boolean;
}

const HEIGHT_REM = 14;
const SPREAD_HEIGHT_REM = 11;
/** Of the text's height. */
const MOST_DOT = 1.5;
/** Enough to see whether the two go together, few enough to draw. */
const MOST_RINGS = 200;

export function MouthPanels(props: MouthPanelsProps) {
  const { project, result } = props;
  const { display } = project;
  const dots = useMemo(() => [...quantileDots(sortedCopy(result.byRing.mouthMm), DOTS)], [result]);
  const scale = evenScale(
    Math.min(0, dots[0] ?? 0),
    Math.max(0, dots.at(-1) ?? 0),
    display === 'inch' ? MM_PER_INCH : 1,
  );
  const axis: NamedAxis = {
    ...scale,
    format: (mm) => formatLength(mm, display, { decimals: 3 }),
    name: `Mouth, ${lengthUnit(display)} (overlap below 0)`,
  };
  return (
    <div className="two-charts">
      <MouthSpread {...props} dots={dots} axis={axis} />
      <MouthAndGap {...props} axis={axis} scale={scale} />
    </div>
  );
}

function MouthSpread({
  project,
  method,
  methodIndex,
  result,
  isFresh,
  dots,
  axis,
}: MouthPanelsProps & { dots: number[]; axis: NamedAxis }) {
  const { display, piece } = project;
  const { assembly } = method;
  const sentence = mouthSentence(result.prediction.mouthMm, display);
  return (
    <ChartFrame
      title="The mouth at dry fit"
      caption={lengthsOnOneLine(
        `${sentence} ${mouthMeaning(assembly.by, piece.sides, assembly.freeJoints)} Each dot is one ring in ${DOTS}.`,
      )}
      table={<TextTableView table={mouthTable(result.prediction.mouthMm, display)} />}
      figures={() => mouthFigures(result.prediction.mouthMm, display)}
    >
      <div className={isFresh ? undefined : 'softened'}>
        <PlainPlot x={axis} heightRem={SPREAD_HEIGHT_REM} summary={sentence}>
          {(place) => <MouthDots place={place} dots={dots} axis={axis} colour={markOf(methodIndex).colour} />}
        </PlainPlot>
      </div>
    </ChartFrame>
  );
}

interface MouthDotsProps {
  place: PlotPlace;
  dots: number[];
  axis: NamedAxis;
  colour: string;
}

function MouthDots({ place, dots, axis, colour }: MouthDotsProps) {
  const { widthPx, heightPx, textPx } = place;
  const span = axis.max - axis.min;
  const shifted = dots.map((mm) => mm - axis.min);
  const room = { widthPx, heightPx, besidePx: Number.POSITIVE_INFINITY, mostPx: MOST_DOT * textPx };
  const dotPx = dotSize([shifted], 0, span, room);
  return (
    <>
      <ClosedLine place={place} />
      {stackDots(shifted, span, widthPx, dotPx).map(({ x, level }) => (
        <circle key={`${x} ${level}`} cx={x} cy={heightPx - (level + 0.5) * dotPx - 1} r={0.43 * dotPx} fill={colour} />
      ))}
    </>
  );
}

/** Where the mouth is neither open nor overlapping. */
function ClosedLine({ place }: { place: PlotPlace }) {
  const at = place.x(0);
  return (
    <g className="closed-line">
      <path d={`M${at} 0V${place.heightPx}`} />
      <text className="axis-text" x={at} y={-0.5 * place.textPx} textAnchor="middle">
        closed
      </text>
    </g>
  );
}

function MouthAndGap({
  project,
  methodIndex,
  result,
  isFresh,
  axis,
  scale,
}: MouthPanelsProps & { axis: NamedAxis; scale: EvenScale }) {
  const { display, limits } = project;
  const { byRing, prediction } = result;
  const limitMm = limits.showGapMm;
  const found = useMemo(() => mouthAgainstGap(byRing.mouthMm, byRing.showGapMm, limitMm), [byRing, limitMm]);
  const said = mouthAgainstGapSentence(found, limitMm, display);
  const gaps = gapScale(prediction.showGapMm.p99, limitMm * 1.1, display);
  const y: NamedAxis = {
    min: 0,
    max: gaps.maxMm,
    ticks: gaps.ticksMm,
    format: (mm) => formatLength(mm, display, { decimals: display === 'metric' ? 2 : 3 }),
    name: `Widest gap that shows, ${lengthUnit(display)}`,
  };
  const count = Math.min(MOST_RINGS, byRing.showGapMm.length);
  const rings = Array.from({ length: count }, (_, ring) => ({
    ring,
    mouthMm: Math.min(Math.max(byRing.mouthMm[ring] ?? 0, scale.min), scale.max),
    gapMm: byRing.showGapMm[ring] ?? 0,
  }));
  return (
    <ChartFrame
      title="Mouth against gap"
      caption={lengthsOnOneLine(
        `${said} Drawn are the first ${count} rings; hollow ones are over the limit, those at the edge lie beyond it.`,
      )}
      table={<TextTableView table={mouthAgainstGapTable(found, limitMm, display)} />}
      figures={() => mouthAgainstGapFigures(found, display)}
    >
      <div className={isFresh ? undefined : 'softened'}>
        <PlainPlot x={axis} y={y} heightRem={HEIGHT_REM} summary={said}>
          {(place) => (
            <>
              <ClosedLine place={place} />
              <LimitMark place={place} limitMm={limitMm} limitText={limitText(limitMm, display)} />
              {rings.map(({ ring, mouthMm, gapMm }) => (
                <circle
                  key={ring}
                  cx={place.x(mouthMm)}
                  cy={place.y(Math.min(gapMm, gaps.maxMm))}
                  {...(gapMm > limitMm
                    ? { r: 0.2 * place.textPx, className: 'fails' }
                    : { r: 0.22 * place.textPx, fill: markOf(methodIndex).colour, fillOpacity: 0.75 })}
                />
              ))}
            </>
          )}
        </PlainPlot>
      </div>
    </ChartFrame>
  );
}
