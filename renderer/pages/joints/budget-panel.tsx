/** The error budget: what each source brings to the spread of the gap, and what 95 of 100 stay under were it perfect. */

import type { IndexEstimate } from '../../../sim/budget/sobol';
import { budgetFigures } from '../../../sim/export/source-figures';
import {
  leftOutSentence,
  SOURCE_TABLE_NOTE,
  sourceTable,
  type WeighedSource,
  weighedSources,
} from '../../../sim/wording/budget';
import type { Display } from '../../../sim/wording/figures';
import { gapText } from '../../../sim/wording/figures';
import { SOURCE_WORDS } from '../../../sim/wording/sources';
import { markOf } from '../../app/method-mark';
import { unbroken } from '../../app/unbroken';
import { type GapScale, gapScale } from '../../charts/gap-scale';
import { TextTableView } from '../../charts/text-table';
import { formatLength, lengthUnit } from '../../inputs/format-quantity';
import { useDocument } from '../../state/document-store';
import type { QuestionOutcome } from '../../state/use-question';
import type { BudgetAnswer } from '../../worker/questions';
import { QuestionPanel } from '../question-panel';

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
  const limitMm = useDocument((state) => state.project.limits.showGapMm);
  return (
    <QuestionPanel
      title="What each source of error brings"
      outcome={outcome}
      room="24rem"
      caption={() =>
        'Left: the part of the worst gap’s spread that would go with the source, with where it may lie; parts overlap and ' +
        `need not add up to 100. Right: the gap that 95 of 100 pieces would stay under were the source perfect, in ${lengthUnit(display)}.`
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
  return (
    <div className="budget">
      <div className="budget-row budget-head" aria-hidden="true">
        <span />
        <span className="budget-title">Part of the spread, %</span>
        <span className="budget-title">If perfect, 95 of 100 under</span>
      </div>
      <ul className="budget-rows">
        {telling.map((source) => (
          <SourceRow
            key={source.effect.source}
            {...source}
            nowMm={budget.showGapP95Mm}
            limitMm={limitMm}
            scale={scale}
            display={display}
            colour={colour}
          />
        ))}
      </ul>
      <div className="budget-row budget-axes" aria-hidden="true">
        <span />
        <div className="budget-axis">
          {PERCENT_TICKS.map((tick) => (
            <span key={tick} style={{ insetInlineStart: `${tick}%` }}>
              {tick}
            </span>
          ))}
        </div>
        <span />
        <div className="budget-axis">
          {scale.ticksMm.map((mm) => (
            <span key={mm} style={{ insetInlineStart: `${(100 * mm) / scale.maxMm}%` }}>
              {formatLength(mm, display, { decimals: display === 'metric' ? 2 : 3 })}
            </span>
          ))}
        </div>
        <span />
      </div>
      <p className="note">
        {unbroken(
          `Upright line: as things are, ${gapText(budget.showGapP95Mm, display)}; broken line: the limit, ${gapText(limitMm, display)}.`,
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

interface SourceRowProps extends WeighedSource {
  nowMm: number;
  limitMm: number;
  scale: GapScale;
  display: Display;
  colour: string;
}

const percent = (share: number): string => `${100 * Math.min(Math.max(share, 0), 1)}%`;

/** The figure and its interval, to a tenth where the interval is that narrow. */
function percentTexts({ value, low, high }: IndexEstimate): string[] {
  const decimals = high - low < NARROW ? 1 : 0;
  return [value, low, high].map((share) => {
    const text = (100 * share).toFixed(decimals);
    return Number(text) === 0 ? text.replace('-', '') : text;
  });
}

function SourceRow({ effect, index, nowMm, limitMm, scale, display, colour }: SourceRowProps) {
  const { label, explanation } = SOURCE_WORDS[effect.source];
  const { value, low, high } = index?.total ?? { value: 0, low: 0, high: 0 };
  const [seen, least, most] = percentTexts({ value, low, high });
  const onScale = (mm: number): string => percent(mm / scale.maxMm);
  const without = effect.showGapP95WithoutMm;
  return (
    <li className="budget-row">
      <span className="budget-source" title={explanation}>
        {label}
      </span>
      <span className="budget-bar" aria-hidden="true" style={{ color: colour }}>
        <span className="budget-value" style={{ width: percent(value) }} />
        <span
          className="budget-interval"
          style={{ insetInlineStart: percent(low), insetInlineEnd: percent(1 - Math.min(high, 1)) }}
        />
      </span>
      <span className="budget-figure">
        <strong>{seen} %</strong>{' '}
        <span className="interval">
          ({least} to {most})
        </span>
      </span>
      <span className="budget-gap" aria-hidden="true">
        <span
          className="budget-gain"
          style={{
            insetInlineStart: onScale(Math.min(without, nowMm)),
            insetInlineEnd: percent(1 - Math.min(1, Math.max(without, nowMm) / scale.maxMm)),
          }}
        />
        <span className="budget-now" style={{ insetInlineStart: onScale(nowMm) }} />
        <span className="budget-limit" style={{ insetInlineStart: onScale(limitMm) }} />
        <span className="budget-without" style={{ insetInlineStart: onScale(without), color: colour }} />
      </span>
      <span className="budget-figure">
        <strong>{unbroken(gapText(without, display, 0.001))}</strong>
      </span>
    </li>
  );
}
