/** A chart whose figures take a while to work out: empty, being worked out, stopped, failed and answered. */
import type { ReactNode } from 'react';
import type { FigureTable } from '../../sim/export/figure-table';
import { WorkRing } from '../parts/work-ring';
import type { QuestionOutcome } from '../state/use-question';
import { ChartFrame } from './chart-frame';
import './question-panel.css';

interface QuestionPanelProps<Answer> {
  title: string;
  /** What is to be seen, in a sentence; `answer` is null until there is one. */
  caption: (answer: Answer | null) => ReactNode;
  outcome: QuestionOutcome<Answer>;
  /** Kept free before there is an answer, so that little jumps when it comes; a CSS length. */
  room: string;
  table: (answer: Answer) => ReactNode;
  /** The same with all digits, for a file. */
  figures: (answer: Answer) => FigureTable;
  /** What can be moved to ask otherwise; shown whatever the standing. */
  inputs?: ReactNode;
  children: (answer: Answer) => ReactNode;
}

export function QuestionPanel<Answer>(props: QuestionPanelProps<Answer>) {
  const { title, caption, outcome, room, table, figures, inputs, children } = props;
  const { answer, isFresh } = outcome;
  const className = isFresh ? undefined : 'softened';
  return (
    <ChartFrame
      title={title}
      caption={<span className={answer === null ? undefined : className}>{caption(answer)}</span>}
      mark={<QuestionMark outcome={outcome} />}
      table={answer === null ? <p>{PENDING}</p> : <div className={className}>{table(answer)}</div>}
      figures={answer === null ? undefined : () => figures(answer)}
      isDrawn={answer !== null}
    >
      {inputs}
      {answer === null ? <QuestionRoom room={room} /> : <div className={className}>{children(answer)}</div>}
    </ChartFrame>
  );
}

const PENDING = 'Not worked out yet.';

/** The place of an answer that is not there yet. */
function QuestionRoom({ room }: { room: string }) {
  return (
    <p className="question-room" style={{ minHeight: room }}>
      {PENDING}
    </p>
  );
}

/** How far the answer is, with the way to stop and to go on. Nothing once it is there. */
export function QuestionMark({ outcome }: { outcome: QuestionOutcome<unknown> }) {
  const { standing, isFresh, progress, failure, stop, goOn } = outcome;
  if (standing === 'answered') return null;
  const share = progress ? progress.done / progress.wanted : 0;
  const done = progress ? ` ${Math.round(100 * share)} %` : '';
  return (
    <div className="work-mark" data-standing={standing === 'waiting' ? 'preview' : standing}>
      <WorkRing share={share} />
      <span>
        {standing === 'waiting' && 'Waits its turn.'}
        {standing === 'working' && `${isFresh ? 'Being refined' : 'Being worked out'}.${done}`}
        {standing === 'stopped' && (isFresh ? 'Stopped; refined no further.' : 'Stopped before there was an answer.')}
        {standing === 'failed' && failure}
      </span>
      {standing === 'working' && (
        <button type="button" className="quiet" onClick={stop}>
          Stop
        </button>
      )}
      {(standing === 'stopped' || standing === 'failed') && (
        <button type="button" className="quiet" onClick={goOn}>
          {standing === 'failed' ? 'Try again' : 'Go on'}
        </button>
      )}
    </div>
  );
}
