/** How much better or worse each method is than one of them, on the same luck, with where the difference may lie. */

import { memo, type ReactNode } from 'react';
import { differenceFigures } from '../../../sim/export/verdict-figures';
import { MM_PER_INCH, WILL_NOT_CLOSE_MM } from '../../../sim/geometry/thresholds';
import type { Difference } from '../../../sim/statistics/paired';
import {
  costDifferenceText,
  differenceTable,
  gapDifferenceText,
  shareDifferenceText,
} from '../../../sim/wording/differences';
import { ChartFrame } from '../../charts/chart-frame';
import { type ColumnPlace, type PlottedColumn, PlottedRows } from '../../charts/plotted-rows';
import { TextTableView } from '../../charts/text-table';
import { ChoiceField } from '../../inputs/choice-field';
import type { Display } from '../../inputs/field-props';
import { MethodLabel, markOf } from '../../parts/method-mark';
import { useDocument } from '../../state/document-store';
import { useVerdictView } from '../../state/verdict-view';
import './differences.css';
import type { WeighedMethod } from '../../state/use-verdict';
import { type HeldMethod, heldAgainst, RINGS_COMPARED } from './held-against';

const BEST = '';

/** Rendered anew only for other methods: to hold them against each other takes longer than a redraw may. */
export const DifferencesPanel = memo(function DifferencesPanel({ methods }: { methods: readonly WeighedMethod[] }) {
  const display = useDocument((state) => state.project.display);
  const wanted = useVerdictView((view) => view.heldAgainst);
  const found = heldAgainst(methods, wanted);
  if (!found || methods.length < 2) return null;
  const { against, held } = found;
  const others = held.filter(({ name }) => name !== against.name);
  const rows = others.map((method) => cellsOf(method, (gap) => gapDifferenceText(gap, display)));
  const isSoft = (method: WeighedMethod, kind: Kind): boolean =>
    !(method.isFresh && against.isFresh) || (kind !== 'gap' && !(method.isGraded && against.isGraded));
  const columns = KINDS.map((kind): PlottedColumn => {
    const reach = reachOf(rows.map((cells) => cells[kind]));
    return {
      cells: kind,
      axis: { min: -reach, max: reach, ...ticksOf(reach, UNITS[kind](display)) },
      draw: (place) =>
        others.map((method, row) => (
          <DifferenceMark
            key={method.name}
            place={place}
            row={row}
            index={method.index}
            cell={rows[row]?.[kind] ?? null}
            reach={reach}
            isSoft={isSoft(method, kind)}
          />
        )),
    };
  });
  const isCapped = methods.some(({ result }) => result.prediction.trials > RINGS_COMPARED);
  const choices = [
    { value: BEST, label: 'The best of them', note: 'as recommended above' },
    ...methods.map(({ name }) => ({ value: name, label: name })),
  ];
  return (
    <ChartFrame
      title={`Better or worse than “${against.name}”`}
      caption={`Each method on the same luck as “${against.name}”: the mark is the difference, the band where it lies 95 times in 100; a band that crosses the middle line cannot be told from no difference.${isCapped ? ` From the first ${RINGS_COMPARED.toLocaleString('en')} rings.` : ''}`}
      table={<TextTableView table={differenceTable(against.name, held, display)} />}
      figures={() => differenceFigures(held, display)}
    >
      <div className="held-against">
        <ChoiceField
          label="Held against"
          layout="menu"
          value={methods.some(({ name }) => name === wanted) ? (wanted ?? BEST) : BEST}
          choices={choices}
          onChange={(name) => useVerdictView.setState({ heldAgainst: name === BEST ? null : name })}
        />
      </div>
      <div className="difference-grid" role="presentation">
        <div className="difference-row difference-head" aria-hidden="true">
          <span />
          <Heading title="Good pieces of 100" low="fewer" high="more" />
          <Heading title="Gap that 95 of 100 stay under" low="tighter" high="wider" />
          <Heading title="Cost of a good piece" low="cheaper" high="dearer" />
        </div>
        <PlottedRows columns={columns}>
          <ul>
            {others.map((method, row) => (
              <li key={method.name} className="difference-row">
                <MethodLabel index={method.index} name={method.name} />
                {KINDS.map((kind) => (
                  <Cell key={kind} kind={kind} cell={rows[row]?.[kind] ?? null} isSoft={isSoft(method, kind)} />
                ))}
              </li>
            ))}
          </ul>
        </PlottedRows>
      </div>
    </ChartFrame>
  );
});

const KINDS = ['good', 'gap', 'cost'] as const;
type Kind = (typeof KINDS)[number];

const WORDS: Readonly<Record<Kind, string>> = {
  good: 'Good pieces of 100',
  gap: 'Gap that 95 of 100 stay under',
  cost: 'Cost of a good piece',
};

/** What one of the unit that a difference is told in is worth. */
const UNITS: Readonly<Record<Kind, (display: Display) => number>> = {
  good: () => 0.01,
  gap: (display) => (display === 'metric' ? 1 : MM_PER_INCH),
  cost: () => 1,
};

/** No difference, and the largest round figure on either side. */
function ticksOf(reach: number, unit: number): Pick<PlottedColumn['axis'], 'ticks' | 'format'> {
  const power = 10 ** Math.floor(Math.log10(reach / unit));
  const round = ([5, 2, 1].find((step) => step * power * unit <= reach) ?? 1) * power;
  const tickOf = (side: number): number => side * round * unit;
  const told = (tick: number): number => Number((tick / unit).toPrecision(6));
  return { ticks: [-1, 0, 1].map(tickOf), format: (tick) => `${tick > 0 ? '+' : ''}${told(tick)}` };
}

interface CellFigures {
  difference: Difference;
  text: string;
  /** A ring that does not close has a part in it: it is no number, and its mark stands at the end of the scale. */
  isBeyond: boolean;
}

function cellsOf({ differences }: HeldMethod, gapText: (gap: Difference) => string): Record<Kind, CellFigures | null> {
  if (!differences) return { good: null, gap: null, cost: null };
  const { yield: good, showGapP95Mm, cost } = differences;
  return {
    good: { difference: good, text: shareDifferenceText(good).replaceAll(' in 100', ''), isBeyond: false },
    gap: {
      difference: showGapP95Mm,
      text: gapText(showGapP95Mm),
      isBeyond: Math.abs(showGapP95Mm.value) > WILL_NOT_CLOSE_MM,
    },
    cost: cost && { difference: cost, text: costDifferenceText(cost), isBeyond: false },
  };
}

/** Half the width of a column's scale: all its bands fit. */
function reachOf(cells: readonly (CellFigures | null)[]): number {
  const ends = cells.flatMap((cell) =>
    cell && !cell.isBeyond ? [Math.abs(cell.difference.low), Math.abs(cell.difference.high)] : [],
  );
  return Math.max(...ends, Number.MIN_VALUE) * 1.08;
}

function Heading({ title, low, high }: { title: string; low: string; high: string }) {
  return (
    <span className="difference-title">
      <span>{title}</span>
      <span className="difference-sides">
        <span>← {low}</span>
        <span>{high} →</span>
      </span>
    </span>
  );
}

interface CellProps {
  kind: Kind;
  cell: CellFigures | null;
  isSoft: boolean;
}

/** The words of a difference under the place of its mark. */
function Cell({ kind, cell, isSoft }: CellProps): ReactNode {
  const [, figure = cell?.text ?? '', interval = ''] = /^(.*?) (\(.*\))$/.exec(cell?.text ?? '') ?? [];
  return (
    <span className={isSoft ? 'difference-cell softened' : 'difference-cell'}>
      <span data-plot={kind} aria-hidden="true" />
      {cell === null ? (
        <span className="difference-none">no figure</span>
      ) : (
        <span className="difference-figure">
          <span className="head-word">{WORDS[kind]} </span>
          <strong>{figure}</strong> <span className="interval">{interval}</span>
        </span>
      )}
    </span>
  );
}

interface MarkProps {
  place: ColumnPlace;
  row: number;
  index: number;
  cell: CellFigures | null;
  reach: number;
  isSoft: boolean;
}

/** Of the drawing that a method's mark is made in. */
const MARK_SIZE = 12;
const MARK_REM = 0.8;

function DifferenceMark({ place: { x, rows, textPx }, row, index, cell, reach, isSoft }: MarkProps) {
  const band = rows[row];
  if (!band || cell === null) return null;
  const { middlePx, topPx, heightPx } = band;
  const at = (value: number): number => x(Math.min(reach, Math.max(-reach, value)));
  const { difference, isBeyond } = cell;
  const { colour, path } = markOf(index);
  const markPx = MARK_REM * textPx;
  const corner = `translate(${at(difference.value) - markPx / 2} ${middlePx - markPx / 2})`;
  const [from, to] = [at(difference.low), at(difference.high)];
  return (
    <g className={isSoft ? 'softened' : undefined} fill={colour}>
      <path className="edge-line" d={`M${x(0)} ${topPx - 0.25 * textPx}V${topPx + heightPx + 0.25 * textPx}`} />
      {!isBeyond && (
        <rect
          x={from}
          y={middlePx - 0.275 * textPx}
          width={Math.max(2, to - from)}
          height={0.55 * textPx}
          opacity={0.35}
        />
      )}
      <path className="difference-mark" d={path} transform={`${corner} scale(${markPx / MARK_SIZE})`} />
    </g>
  );
}
