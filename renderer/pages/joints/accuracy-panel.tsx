/** How accurate each thing would have to be for a share of good pieces, by itself and all together. */
import { type AccuracyNeeded, MOST_FACTOR, type SourceNeeded } from '../../../sim/decide/accuracy-needed';
import { accuracyFigures } from '../../../sim/export/source-figures';
import type { Method, SourceName } from '../../../sim/project/document';
import { accuracySentences, accuracyTable } from '../../../sim/wording/accuracy';
import { withoutName } from '../../../sim/wording/joints';
import { SOURCE_WORDS } from '../../../sim/wording/sources';
import { TERMS } from '../../../sim/wording/terms';
import { type ColumnPlace, type PlottedColumn, PlottedRows } from '../../charts/plotted-rows';
import { QuestionPanel } from '../../charts/question-panel';
import { TextTableView } from '../../charts/text-table';
import { SliderField } from '../../inputs/slider-field';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { markOf } from '../../parts/method-mark';
import { useDocument } from '../../state/document-store';
import { useJointsView } from '../../state/joints-view';
import { useQuestion } from '../../state/use-question';

const TITLE = 'How accurate each thing would have to be';

export function AccuracyPanel({ method, methodIndex }: { method: Method; methodIndex: number }) {
  const wanted = useJointsView((view) => view.wantedYield);
  const outcome = useQuestion(isShare(wanted) ? { kind: 'accuracy', wanted } : null, methodIndex);
  const display = useDocument((state) => state.project.display);
  return (
    <QuestionPanel
      title={TITLE}
      outcome={outcome}
      room="16rem"
      caption={(needed) =>
        needed && isEnough(needed)
          ? 'How many times larger the errors of each source may become, the others as they are, before too few pieces come out good.'
          : 'How large the errors of each source may be, as a part of what they are now: the dot if it alone is made better, the ring if all are, with least effort.'
      }
      table={(needed) => <TextTableView table={accuracyTable('Source', needed, display)} />}
      figures={(needed) => accuracyFigures(needed, display)}
      inputs={
        <div className="wanted">
          <SliderField
            kind="number"
            label="Good pieces wanted"
            help={TERMS.goodPiece.meaning}
            unit="in 100"
            min={50}
            max={99}
            step={1}
            value={Number((100 * wanted).toPrecision(6))}
            problem={isShare(wanted) ? undefined : 'Give how many of 100 pieces are to be good: above 0 and below 100.'}
            onChange={(inHundred) => useJointsView.setState({ wantedYield: inHundred / 100 })}
          />
        </div>
      }
    >
      {(needed) => <Needed method={method} needed={needed} colour={markOf(methodIndex).colour} />}
    </QuestionPanel>
  );
}

const isShare = (share: number): boolean => share > 0 && share < 1;

const isEnough = ({ yieldNow, wanted }: AccuracyNeeded): boolean => yieldNow >= wanted;

/** Nothing where nothing has to be better. */
const togetherOf = (needed: AccuracyNeeded, source: SourceName): number | null =>
  isEnough(needed) ? null : (needed.balanced?.find((line) => line.source === source)?.factor ?? null);

/** Whether anything is asked of a source: alone it would do, together with others it must, or it stands in the way. */
function isAsked(needed: AccuracyNeeded, { source, factor }: SourceNeeded): boolean {
  if (isEnough(needed)) return factor !== null && factor < MOST_FACTOR;
  return factor !== null || (togetherOf(needed, source) ?? 1) < 1 || needed.inTheWay.includes(source);
}

interface NeededProps {
  method: Method;
  needed: AccuracyNeeded;
  colour: string;
}

function Needed({ method, needed, colour }: NeededProps) {
  const display = useDocument((state) => state.project.display);
  const asked = needed.sources.filter((source) => isAsked(needed, source));
  const others = needed.sources.filter((source) => !isAsked(needed, source));
  const names = others.map(({ source }) => SOURCE_WORDS[source].label.toLowerCase()).join('; ');
  return (
    <div className="accuracy">
      <ul className="sentences">
        {accuracySentences(method, needed, display).map((sentence) => (
          <li key={sentence}>{lengthsOnOneLine(withoutName(sentence, method.name))}</li>
        ))}
      </ul>
      {asked.length > 0 && <Factors needed={needed} asked={asked} colour={colour} />}
      {others.length > 0 && <p className="note">Sources that may stay as they are: {names}.</p>}
    </div>
  );
}

const BETTER_TICKS = [0, 0.25, 0.5, 0.75, 1];
const WORSE_TICKS = [0, 2, 4, 6, MOST_FACTOR];

interface FactorsProps {
  needed: AccuracyNeeded;
  asked: readonly SourceNeeded[];
  colour: string;
}

function Factors({ needed, asked, colour }: FactorsProps) {
  const hasRoom = isEnough(needed);
  const most = hasRoom ? MOST_FACTOR : 1;
  const column: PlottedColumn = {
    cells: 'factor',
    axis: { min: 0, max: most, ticks: hasRoom ? WORSE_TICKS : BETTER_TICKS, format: String },
    draw: ({ x, rows, textPx }: ColumnPlace) =>
      rows.map(({ middlePx, topPx, heightPx }, row) => {
        const source = asked[row];
        if (!source) return null;
        const at = (factor: number): number => x(Math.min(factor, most));
        const together = togetherOf(needed, source.source);
        return (
          <g key={source.source}>
            <path className="edge-line" d={`M${at(1)} ${topPx - 0.375 * textPx}v${heightPx + 0.75 * textPx}`} />
            {source.factor !== null && (
              <>
                <path className="budget-gain" d={`M${at(1)} ${middlePx}H${at(source.factor)}`} />
                <circle cx={at(source.factor)} cy={middlePx} r={0.375 * textPx} fill={colour} />
              </>
            )}
            {together !== null && (
              <circle
                className="together"
                cx={at(together)}
                cy={middlePx}
                r={0.45 * textPx}
                style={{ stroke: colour }}
              />
            )}
          </g>
        );
      }),
  };
  return (
    <div>
      <div className="factor-row factor-head" aria-hidden="true">
        <span />
        <span className="budget-title">Times as large as now</span>
        <span className="budget-title">Alone</span>
        {!hasRoom && <span className="budget-title">Together</span>}
      </div>
      <PlottedRows columns={[column]}>
        <ul className="budget-rows">
          {asked.map(({ source, factor }) => (
            <li key={source} className="factor-row">
              <span className="budget-source" title={SOURCE_WORDS[source].explanation}>
                {SOURCE_WORDS[source].label}
              </span>
              <span data-plot="factor" aria-hidden="true" />
              <Factor word="alone" factor={factor} />
              {!hasRoom && <Factor word="together" factor={togetherOf(needed, source)} />}
            </li>
          ))}
        </ul>
      </PlottedRows>
    </div>
  );
}

interface FactorProps {
  word: string;
  factor: number | null;
}

function Factor({ word, factor }: FactorProps) {
  const isMost = factor !== null && factor >= MOST_FACTOR;
  return (
    <span className="budget-figure">
      <span className="head-word">{word} </span>
      {factor === null ? '–' : <strong>{`${factorText(factor)}${isMost ? ' or more' : ''}`}</strong>}
    </span>
  );
}

const LEAST_TOLD = 0.01;

/** "0.34", "under 0.01", "1". */
function factorText(factor: number): string {
  if (factor > 0 && factor < LEAST_TOLD) return `under ${LEAST_TOLD}`;
  return String(Number(factor.toPrecision(2)));
}
