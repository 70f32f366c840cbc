/** The chance of a good piece against the limit as plain SVG: one line a method with its interval. */
import type { MethodResult } from '../../sim/run/prediction';
import { gapText } from '../../sim/wording/figures';
import { gapScale } from '../charts/gap-scale';
import { spreadLabels } from '../charts/spread-labels';
import type { Display } from '../inputs/field-props';
import { markOf } from '../parts/method-mark';
import { yieldAt } from '../state/at-limit';
import { SheetTicks } from './sheet-ticks';

export interface CurveOf {
  result: MethodResult;
  /** Place of the method in the project. */
  index: number;
}

interface SheetCurveProps {
  curves: readonly CurveOf[];
  limitMm: number;
  display: Display;
  reachMm: number;
  widthPx: number;
  heightPx: number;
}

const POINTS = 81;
const LEFT_PX = 30;
const NAMES_PX = 190;
const TOP_PX = 20;
const BOTTOM_PX = 34;
const LABEL_PX = 16;
const TEXT_PX = 12;
const CHANCES = [0, 0.25, 0.5, 0.75, 1];

export function SheetCurve({ curves, limitMm, display, reachMm, widthPx, heightPx }: SheetCurveProps) {
  const scale = gapScale(reachMm, limitMm, display);
  const plotPx = widthPx - LEFT_PX - NAMES_PX;
  const highPx = heightPx - TOP_PX - BOTTOM_PX;
  const x = (mm: number): number => (mm / scale.maxMm) * plotPx;
  const y = (chance: number): number => TOP_PX + (1 - chance) * highPx;
  const lines = curves.map(({ result, index }) => {
    const points = Array.from({ length: POINTS }, (_, i) => {
      const mm = (scale.maxMm * i) / (POINTS - 1);
      return { x: x(mm), ...yieldAt(result, mm) };
    });
    const at = (chance: 'value' | 'low' | 'high') => points.map((p) => `${p.x.toFixed(1)} ${y(p[chance]).toFixed(1)}`);
    const path = `M${at('value').join('L')}`;
    const band = `M${at('low').join('L')}L${at('high').reverse().join('L')}Z`;
    return { index, name: result.prediction.name, path, band, endY: y(points.at(-1)?.value ?? 0) };
  });
  // Lines that end together are told in the order in which they stand at the limit.
  const wanted = lines.map(({ endY }, i) => endY - (curves[i]?.result.prediction.yield.value ?? 0));
  const labels = spreadLabels(wanted, LABEL_PX, TOP_PX, TOP_PX + highPx);
  return (
    <svg
      className="sheet-chart"
      role="img"
      aria-label="Chance of a good piece against the limit; the table of the methods has the figures at the limit that is set"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      fontSize={TEXT_PX}
    >
      <g transform={`translate(${LEFT_PX} 0)`}>
        {CHANCES.map((chance) => (
          <g key={chance} transform={`translate(0 ${y(chance)})`}>
            <path className={chance === 0 ? 'chart-base' : 'chart-grid-line'} d={`M0 0H${plotPx}`} />
            <text className="chart-text" textAnchor="end" x={-6} y={4}>
              {chance * 100}
            </text>
          </g>
        ))}
        <SheetTicks scale={scale} display={display} plotPx={plotPx} footPx={y(0)} />
        <text className="chart-text" textAnchor="middle" x={plotPx / 2} y={y(0) + 31}>
          {display === 'metric' ? 'limit for the gap that shows, mm' : 'limit for the gap that shows, in'}
        </text>
        <path className="chart-limit" d={`M${x(limitMm)} ${TOP_PX - 4}V${y(0)}`} />
        <text className="chart-limit-text" textAnchor="middle" x={x(limitMm)} y={TOP_PX - 8}>
          {gapText(limitMm, display)}
        </text>
        {lines.map(({ index, name, path, band, endY }, i) => (
          <g key={name}>
            <path d={band} fill={markOf(index).colour} fillOpacity={0.2} />
            <path d={path} fill="none" stroke={markOf(index).colour} strokeWidth={1.75} />
            <path className="chart-leader" d={`M${plotPx} ${endY}L${plotPx + 14} ${labels[i] ?? 0}`} />
            <g transform={`translate(${plotPx + 18} ${labels[i] ?? 0})`}>
              <path d={markOf(index).path} fill={markOf(index).colour} transform="translate(0 -6) scale(0.9)" />
              <text className="chart-name" x={15} y={4}>
                {markOf(index).letter} {shortened(name)}
              </text>
            </g>
          </g>
        ))}
      </g>
    </svg>
  );
}

const LONGEST_NAME = 26;

/** The table beside the chart has the whole name. */
function shortened(name: string): string {
  return name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
}
