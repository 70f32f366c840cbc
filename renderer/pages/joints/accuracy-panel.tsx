/** How accurate each thing would have to be for a share of good pieces, by itself and all together. */
import { type AccuracyNeeded, MOST_FACTOR, type SourceNeeded } from '../../../sim/decide/accuracy-needed';
import { accuracyFigures } from '../../../sim/export/source-figures';
import type { Method } from '../../../sim/project/document';
import { accuracySentences, accuracyTable } from '../../../sim/wording/accuracy';
import { withoutName } from '../../../sim/wording/joints';
import { TERMS } from '../../../sim/wording/terms';
import { FailureBoundary } from '../../app/failure-boundary';
import { Scrolls } from '../../app/scrolls';
import { unbroken } from '../../app/unbroken';
import { TextTableView } from '../../charts/text-table';
import { SaveTable } from '../../exports/save-table';
import { ExplainedHead } from '../../inputs/explained';
import { SliderField } from '../../inputs/slider-field';
import { useDocument } from '../../state/document-store';
import { useJointsView } from '../../state/joints-view';
import { useQuestion } from '../../state/use-question';
import { QuestionMark, QuestionRoom } from '../question-panel';

const TITLE = 'How accurate each thing would have to be';

export function AccuracyPanel({ method, methodIndex }: { method: Method; methodIndex: number }) {
  const wanted = useJointsView((view) => view.wantedYield);
  const outcome = useQuestion(isShare(wanted) ? { kind: 'accuracy', wanted } : null, methodIndex);
  const { answer, isFresh } = outcome;
  const display = useDocument((state) => state.project.display);
  return (
    <section className="chart-frame" aria-labelledby="accuracy-title">
      <div className="chart-title">
        <div className="headed">
          <h2 id="accuracy-title">{TITLE}</h2>
          <ExplainedHead head={TITLE} />
        </div>
        <QuestionMark outcome={outcome} />
        <SaveTable what={TITLE} table={answer && (() => accuracyFigures(answer, display))} />
      </div>
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
      <FailureBoundary what={`table "${TITLE}"`}>
        {answer === null ? <QuestionRoom room="16rem" /> : <Needed method={method} needed={answer} isFresh={isFresh} />}
      </FailureBoundary>
    </section>
  );
}

const isShare = (share: number): boolean => share > 0 && share < 1;

/** Whether anything is asked of a source: alone it would do, together with others it must, or it stands in the way. */
function isAsked({ wanted, yieldNow, inTheWay, balanced }: AccuracyNeeded, { source, factor }: SourceNeeded): boolean {
  if (yieldNow >= wanted) return factor !== null && factor < MOST_FACTOR;
  const together = balanced?.find((line) => line.source === source)?.factor ?? 1;
  return factor !== null || together < 1 || inTheWay.includes(source);
}

function Needed({ method, needed, isFresh }: { method: Method; needed: AccuracyNeeded; isFresh: boolean }) {
  const display = useDocument((state) => state.project.display);
  const asked = needed.sources.filter((source) => isAsked(needed, source));
  const others = needed.sources.filter((source) => !isAsked(needed, source));
  return (
    <div className={isFresh ? 'accuracy' : 'accuracy softened'}>
      <ul className="sentences">
        {accuracySentences(method, needed, display).map((sentence) => (
          <li key={sentence}>{unbroken(withoutName(sentence, method.name))}</li>
        ))}
      </ul>
      {asked.length > 0 && <Figures label={`${TITLE}, table`} needed={{ ...needed, sources: asked }} />}
      {others.length > 0 && (
        <details>
          <summary>Sources that may stay as they are</summary>
          <Figures label="Sources that may stay as they are" needed={{ ...needed, sources: others }} />
        </details>
      )}
    </div>
  );
}

function Figures({ label, needed }: { label: string; needed: AccuracyNeeded }) {
  const display = useDocument((state) => state.project.display);
  return (
    <Scrolls label={label}>
      <div className="table-twin">
        <TextTableView table={accuracyTable('Source', needed, display)} />
      </div>
    </Scrolls>
  );
}
