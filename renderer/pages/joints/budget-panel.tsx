/** The error budget: what each source brings to the spread of the gap, and what 95 of 100 stay under were it perfect. */

import type { IndexEstimate } from '../../../sim/budget/sobol';
import { budgetFigures } from '../../../sim/export/source-figures';
import type { BudgetAnswer } from '../../../sim/questions/questions';
import {
  leftOutSentence,
  SOURCE_TABLE_NOTE,
  sourceTable,
  type WeighedSource,
  weighedSources,
} from '../../../sim/wording/budget';
import type { Display } from '../../../sim/wording/figures';
import { gapText, limitText } from '../../../sim/wording/figures';
import { SOURCE_WORDS } from '../../../sim/wording/sources';
import { gapScale } from '../../charts/gap-scale';
import { type ColumnPlace, type PlottedColumn, PlottedRows } from '../../charts/plotted-rows';
import { QuestionPanel } from '../../charts/question-panel';
import { TextTableView } from '../../charts/text-table';
import { formatLength } from '../../inputs/format-quantity';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { markOf } from '../../parts/method-mark';
import { useDocument } from '../../state/document-store';
import { useShownProject } from '../../state/shown-project';
import type { QuestionOutcome } from '../../state/use-question';

interface BudgetPanelProps {
  outcome: QuestionOutcome<BudgetAnswer>;
  methodIndex: number;
}

/** An interval narrower than this is told to a tenth of a percent. */
const NARROW = 0.02;
/** Its lines are those of a terminal; here only each sentence begins a new one. */
const NOTE = SOURCE_TABLE_NOTE.replace(/\n(?=[a-z])/g, ' ');
const PERCENT_TICKS = [0, 25, 50, 75, 100];

export function BudgetPanel({ outcome, methodIndex }: BudgetPanelProps) {
  const display = useDocument((state) => state.project.display);
  const limitMm = useShownProject().limits.showGapMm;
  return (
    <QuestionPanel
      title="What each source of error brings"
      outcome={outcome}
      room="24rem"
      caption={() =>
        'Left: the part of the worst gap’s spread that would go with the source, with where it may lie; parts overlap and ' +
        `need not add up to 100. Right: the gap that 95 of 100 pieces would stay under were the source perfect, in ${display === 'inch' ? 'inches' : 'mm'}.`
      }
      table={({ budget, indices }) => (
        <>
          <TextTableView table={sourceTable('Source', budget, indices, display)} />
          <p className="note table-note">{NOTE}</p>
        </>
      )}
      figures={({ budget, indices }) => budgetFigures(budget, indices, display)}
    >
      {(answer) => <Budget answer={answer} display={display} limitMm={limitMm} colour={markOf(methodIndex).colour} />}
    </QuestionPanel>
  );
}

interface BudgetProps {
  answer: BudgetAnswer;
  display: Display;
  limitMm: number;
  colour: string;
}

function Budget({ answer: { budget, indices }, display, limitMm, colour }: BudgetProps) {
  const sources = weighedSources(budget, indices);
  const telling = sources.filter(({ counts }) => counts);
  const scale = gapScale(budget.showGapP95Mm * 1.05, limitMm * 1.05, display);
  const rest = leftOutSentence(budget, indices);
  if (sources.length === 0) return <p>No source of error is above zero.</p>;
  const lines: BudgetLines = { telling, nowMm: budget.showGapP95Mm, limitMm, maxMm: scale.maxMm, colour };
  const columns: PlottedColumn[] = [
    {
      cells: 'part',
      axis: { min: 0, max: 100, ticks: PERCENT_TICKS, format: String },
      draw: (place) => <Parts place={place} {...lines} />,
    },
    {
      cells: 'gap',
      axis: {
        min: 0,
        max: scale.maxMm,
        ticks: scale.ticksMm,
        format: (mm) => formatLength(mm, display, { decimals: display === 'metric' ? 2 : 3 }),
      },
      draw: (place) => <Gaps place={place} {...lines} />,
    },
  ];
  return (
    <div className="budget">
      <div className="budget-row budget-head" aria-hidden="true">
        <span />
        <span className="budget-title">Part of the spread, %</span>
        <span className="budget-title">If perfect, 95 of 100 under</span>
      </div>
      <PlottedRows columns={columns}>
        <ul className="budget-rows">
          {telling.map((source) => (
            <SourceRow key={source.effect.source} {...source} display={display} />
          ))}
        </ul>
      </PlottedRows>
      <p className="note">
        {lengthsOnOneLine(
          `Upright line: as things are, ${gapText(budget.showGapP95Mm, display, 0.001)}; broken line: the limit, ${limitText(limitMm, display)}.`,
        )}{' '}
        Parts near 0 are estimates from few chance draws and may come out a little below 0.
      </p>
      {rest !== null && (
        <details>
          <summary>Sources that hardly matter</summary>
          <p>{rest}</p>
        </details>
      )}
    </div>
  );
}

interface BudgetLines {
  telling: readonly WeighedSource[];
  nowMm: number;
  limitMm: number;
  maxMm: number;
  colour: string;
}

const shareOf = ({ index }: WeighedSource): IndexEstimate => index?.total ?? { value: 0, low: 0, high: 0 };
const percent = (share: number): number => 100 * Math.min(Math.max(share, 0), 1);

/** Each source's part of the spread as a bar, with a darker one for where it may lie. */
function Parts({ place: { x, rows, textPx }, telling, colour }: BudgetLines & { place: ColumnPlace }) {
  return rows.map(({ middlePx }, row) => {
    const source = telling[row];
    if (!source) return null;
    const { value, low, high } = shareOf(source);
    const [from, to] = [x(percent(low)), x(percent(high))];
    return (
      <g key={source.effect.source} fill={colour}>
        <rect x={0} y={middlePx - 0.375 * textPx} width={x(percent(value))} height={0.75 * textPx} opacity={0.45} />
        <rect x={from} y={middlePx - 0.575 * textPx} width={Math.max(2, to - from)} height={1.15 * textPx} />
      </g>
    );
  });
}

/** The gap were each source perfect, drawn from the gap as things are. */
function Gaps({
  place: { x, rows, textPx },
  telling,
  nowMm,
  limitMm,
  maxMm,
  colour,
}: BudgetLines & { place: ColumnPlace }) {
  const at = (mm: number): number => x(Math.min(mm, maxMm));
  return rows.map(({ middlePx }, row) => {
    const effect = telling[row]?.effect;
    if (!effect) return null;
    const upright = `V${middlePx + 1.1 * textPx}`;
    const top = middlePx - 1.1 * textPx;
    const without = at(effect.showGapP95WithoutMm);
    return (
      <g key={effect.source}>
        <path className="budget-gain" d={`M${without} ${middlePx}H${at(nowMm)}`} />
        <path className="budget-now" d={`M${at(nowMm)} ${top}${upright}`} />
        <path className="budget-limit" d={`M${at(limitMm)} ${top}${upright}`} />
        <circle cx={without} cy={middlePx} r={0.375 * textPx} fill={colour} />
      </g>
    );
  });
}

/** The figure and its interval, to a tenth where the interval is that narrow. */
function percentTexts({ value, low, high }: IndexEstimate): string[] {
  const decimals = high - low < NARROW ? 1 : 0;
  return [value, low, high].map((share) => {
    const text = (100 * share).toFixed(decimals);
    return Number(text) === 0 ? text.replace('-', '') : text;
  });
}

function SourceRow({ display, ...source }: WeighedSource & { display: Display }) {
  const { effect } = source;
  const { label, explanation } = SOURCE_WORDS[effect.source];
  const [seen, least, most] = percentTexts(shareOf(source));
  return (
    <li className="budget-row">
      <span className="budget-source" title={explanation}>
        {label}
      </span>
      <span data-plot="part" aria-hidden="true" />
      <span className="budget-figure">
        <strong>{seen} %</strong>{' '}
        <span className="interval">
          ({least} to {most})
        </span>
      </span>
      <span data-plot="gap" aria-hidden="true" />
      <span className="budget-figure">
        <strong>{lengthsOnOneLine(gapText(effect.showGapP95WithoutMm, display, 0.001))}</strong>
      </span>
    </li>
  );
}
