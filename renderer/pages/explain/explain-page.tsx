/** One sheet for a client, or all figures for the maker: edited on the left, and on the right as it prints. */
import type { MakerAnswers, SheetInput } from '../../../main/contract/report';
import { BUDGET_TRIALS } from '../../../sim/budget/budget';
import { chanceSentence } from '../../../sim/wording/explain';
import { QuestionMark } from '../../charts/question-panel';
import { FailureBoundary } from '../../parts/failure-boundary';
import { PageFrame } from '../../parts/page-frame';
import { WorkMark } from '../../parts/work-mark';
import { methodIndexOf } from '../../report/method-index';
import { type QuestionOutcome, useQuestion } from '../../state/use-question';
import { useView } from '../../state/view-store';
import './explain.css';
import { SheetInputs } from './sheet-inputs';
import { SheetPreview } from './sheet-preview';
import { SheetTools } from './sheet-tools';
import { useSheet } from './use-sheet';

export function ExplainPage() {
  const { input, isFresh } = useSheet();
  const kind = useView((view) => view.sheetKind);
  const isSoft = !isFresh;
  return (
    <PageFrame
      question="What can be promised, and why is no joint perfect?"
      answer={
        <span className={isSoft ? 'softened' : undefined}>
          {input === null ? 'The first rings are being closed.' : chanceSentence(input.project, input.result)}
        </span>
      }
      inputs={<SheetInputs />}
      consequences={
        <>
          <WorkMark />
          {input !== null && (
            <FailureBoundary what="sheet" key={kind}>
              {kind === 'client' ? (
                <ClientPanel input={input} isSoft={isSoft} />
              ) : (
                <MakerPanel input={input} isSoft={isSoft} />
              )}
            </FailureBoundary>
          )}
        </>
      }
    />
  );
}

interface PanelProps {
  input: SheetInput;
  isSoft: boolean;
}

/** Asks where the gap comes from, which the paragraph on why it shows is about. */
function ClientPanel({ input, isSoft }: PanelProps) {
  const budget = useQuestion({ kind: 'budget', rings: BUDGET_TRIALS }, methodIndexOf(input.project, input.result));
  const answers: MakerAnswers = { budget: budget.isFresh ? budget.answer : null, testValue: null };
  return (
    <div className="sheet-panel">
      <SheetTools input={input} kind="client" answers={answers} />
      {!budget.isFresh && (
        <dl className="sheet-pending">
          <Pending what="Where the gap comes from" outcome={budget} />
        </dl>
      )}
      <SheetPreview input={input} kind="client" answers={answers} isSoft={isSoft} />
    </div>
  );
}

/** Asks for what only the maker's report says, while it is on the screen. */
function MakerPanel({ input, isSoft }: PanelProps) {
  const index = methodIndexOf(input.project, input.result);
  const budget = useQuestion({ kind: 'budget', rings: BUDGET_TRIALS }, index);
  const worth = useQuestion({ kind: 'testValue' }, index);
  const answers: MakerAnswers = {
    budget: budget.isFresh ? budget.answer : null,
    testValue: worth.isFresh ? worth.answer : null,
  };
  return (
    <div className="sheet-panel">
      <SheetTools input={input} kind="maker" answers={answers} />
      {!(budget.isFresh && worth.isFresh) && (
        <dl className="sheet-pending">
          <Pending what="Where the gap comes from" outcome={budget} />
          <Pending what="Test cuts" outcome={worth} />
        </dl>
      )}
      <SheetPreview input={input} kind="maker" answers={answers} isSoft={isSoft} />
    </div>
  );
}

/** A part of the report that is not there yet, and how far it is. */
function Pending({ what, outcome }: { what: string; outcome: QuestionOutcome<unknown> }) {
  if (outcome.isFresh) return null;
  return (
    <div>
      <dt>{what}</dt>
      <dd>
        <QuestionMark outcome={outcome} />
      </dd>
    </div>
  );
}
