/** Where to aim the tilt: the chance of a good piece over deliberate offsets, and the one that makes most pieces good. */
import type { BestAim } from '../../../sim/decide/aim';
import { aimFigures } from '../../../sim/export/source-figures';
import { ringGeometry } from '../../../sim/geometry/ring';
import type { Method, Project } from '../../../sim/project/document';
import { aimSentences, aimTable, isAimWorthwhile } from '../../../sim/wording/aim';
import { signedText } from '../../../sim/wording/differences';
import { withoutName } from '../../../sim/wording/joints';
import { evenScale } from '../../charts/even-scale';
import { type NamedAxis, PlainPlot, type PlotPlace } from '../../charts/plain-plot';
import { QuestionPanel } from '../../charts/question-panel';
import { TextTableView } from '../../charts/text-table';
import { CautionsLine } from '../../parts/cautions-line';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { markOf } from '../../parts/method-mark';
import { edit } from '../../state/document-store';
import { withFigure } from '../../state/edits';
import type { QuestionOutcome } from '../../state/use-question';
import { announce } from '../../state/view-store';

interface AimPanelProps {
  project: Project;
  method: Method;
  methodIndex: number;
  outcome: QuestionOutcome<BestAim>;
}

const HEIGHT_REM = 16;
/** An aim is set on the saw to a hundredth of a degree at best. */
const AIM_DECIMALS = 2;

const offset = (deg: number): string => `${signedText(deg, AIM_DECIMALS)}°`;
const setOnSaw = (deg: number): number => Number(deg.toFixed(AIM_DECIMALS));

export function AimPanel({ project, method, methodIndex, outcome }: AimPanelProps) {
  const { bevelDeg } = ringGeometry(project.piece);
  const said = (best: BestAim): string => withoutName(aimSentences(best, method, bevelDeg)[0] ?? '', method.name);
  return (
    <QuestionPanel
      title="Where to aim the tilt"
      outcome={outcome}
      room={`${HEIGHT_REM + 3}rem`}
      caption={(best) =>
        best
          ? lengthsOnOneLine(said(best))
          : 'Gaps that show cost more than gaps that are hidden: a tilt a little off may make more pieces good.'
      }
      table={(best) => <TextTableView table={aimTable(best)} />}
      figures={aimFigures}
    >
      {(best) => (
        <>
          {bevelDeg !== 0 && (
            <AimChart
              best={best}
              isWorthwhile={isAimWorthwhile(best, bevelDeg)}
              aimDeg={method.tilt.aimDeg}
              methodIndex={methodIndex}
              summary={said(best)}
            />
          )}
          <AimButtons best={best} aimDeg={method.tilt.aimDeg} bevelDeg={bevelDeg} methodIndex={methodIndex} />
          <CautionsLine />
        </>
      )}
    </QuestionPanel>
  );
}

interface AimButtonsProps {
  best: BestAim;
  aimDeg: number;
  bevelDeg: number;
  methodIndex: number;
}

function AimButtons({ best, aimDeg, bevelDeg, methodIndex }: AimButtonsProps) {
  const wanted = isAimWorthwhile(best, bevelDeg) ? setOnSaw(best.aimDeg) : 0;
  const aimAt = (deg: number): void => {
    edit(withFigure(methodIndex, 'tilt', 'aimDeg', deg));
    announce(deg === 0 ? 'The tilt has no aim any more.' : `Tilt aimed at ${offset(deg)}.`);
  };
  return (
    <p className="aim-buttons">
      {wanted !== 0 && (
        <button type="button" disabled={aimDeg === wanted} onClick={() => aimAt(wanted)}>
          {aimDeg === wanted ? `The tilt is aimed at ${offset(wanted)}` : `Aim the tilt at ${offset(wanted)}`}
        </button>
      )}
      {aimDeg !== 0 && (
        <button type="button" onClick={() => aimAt(0)}>
          Take the aim of {offset(aimDeg)} back
        </button>
      )}
    </p>
  );
}

interface AimChartProps {
  best: BestAim;
  aimDeg: number;
  methodIndex: number;
  summary: string;
  isWorthwhile: boolean;
}

function AimChart({ best, aimDeg, methodIndex, summary, isWorthwhile }: AimChartProps) {
  const worth = worthShowing(best);
  const ends = [worth[0]?.aimDeg ?? 0, worth.at(-1)?.aimDeg ?? 0, aimDeg];
  const x: NamedAxis = {
    ...evenScale(Math.min(...ends), Math.max(...ends)),
    format: (deg) => (deg === 0 ? '0' : `${deg > 0 ? '+' : ''}${deg}°`),
    name: 'Aim off the tilt the ring asks for',
  };
  const y: NamedAxis = {
    min: 0,
    max: 1,
    ticks: [0, 0.25, 0.5, 0.75, 1],
    format: (share) => `${100 * share}`,
    name: 'Good pieces in 100',
  };
  return (
    <PlainPlot x={x} y={y} heightRem={HEIGHT_REM} summary={summary}>
      {(place) => (
        <AimCurve
          place={place}
          points={worth}
          best={isWorthwhile ? best : null}
          aimDeg={aimDeg}
          methodIndex={methodIndex}
        />
      )}
    </PlainPlot>
  );
}

/** Far out no piece is good whatever the aim; nothing is to be seen there. */
function worthShowing({ curve, yield: most }: BestAim): BestAim['curve'] {
  const isWorth = curve.map(({ yield: good }) => good.value > 0.02 * most.value);
  const first = Math.max(0, isWorth.indexOf(true) - 1);
  return curve.slice(first, isWorth.lastIndexOf(true) + 2);
}

interface AimCurveProps {
  place: PlotPlace;
  points: BestAim['curve'];
  /** null where no aim is worth it. */
  best: BestAim | null;
  aimDeg: number;
  methodIndex: number;
}

function AimCurve({ place: { x, y, heightPx, textPx }, points, best, aimDeg, methodIndex }: AimCurveProps) {
  const { colour, path } = markOf(methodIndex);
  const along = (value: (point: (typeof points)[number]) => number): string[] =>
    points.map((point) => `${x(point.aimDeg)} ${y(value(point))}`);
  const band = [...along((point) => point.yield.high), ...along((point) => point.yield.low).toReversed()];
  const size = 1.1 * textPx;
  return (
    <>
      <path d={`M${band.join('L')}Z`} fill={colour} fillOpacity={0.2} />
      <path className="strip-line" stroke={colour} d={`M${along((point) => point.yield.value).join('L')}`} />
      {points.map((point) => (
        <circle key={point.aimDeg} cx={x(point.aimDeg)} cy={y(point.yield.value)} r={0.2 * textPx} fill={colour} />
      ))}
      <g className="aim-now">
        <path d={`M${x(aimDeg)} 0V${heightPx}`} />
        <text x={x(aimDeg)} y={-0.5 * textPx} textAnchor="middle">
          {aimDeg === 0 ? 'no aim now' : 'aim now'}
        </text>
      </g>
      {best && (
        <>
          <g
            transform={`translate(${x(best.aimDeg) - size / 2} ${y(best.yield.value) - size / 2}) scale(${size / 12})`}
          >
            <path className="aim-best" d={path} fill={colour} />
          </g>
          <text className="aim-best-text" x={x(best.aimDeg)} y={y(best.yield.value) + 1.9 * textPx} textAnchor="middle">
            best {offset(best.aimDeg)}
          </text>
        </>
      )}
    </>
  );
}
