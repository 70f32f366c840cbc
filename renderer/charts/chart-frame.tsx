/** Around every chart: its caption, its own boundary for failures, and the same figures as a table. */
import type { ReactNode } from 'react';
import { FailureBoundary } from '../app/failure-boundary';
import { Scrolls } from '../app/scrolls';

interface ChartFrameProps {
  title: string;
  /** What is to be seen, in a sentence. */
  caption: ReactNode;
  /** How far its figures are worked out, beside the title. */
  mark?: ReactNode;
  table: ReactNode;
  children: ReactNode;
}

export function ChartFrame({ title, caption, mark, table, children }: ChartFrameProps) {
  return (
    <figure className="chart-frame">
      <figcaption>
        <div className="chart-title">
          <h2>{title}</h2>
          {mark}
        </div>
        <p>{caption}</p>
      </figcaption>
      <FailureBoundary what={`chart "${title}"`}>{children}</FailureBoundary>
      <details className="table-twin">
        <summary>{title}, as a table</summary>
        <Scrolls label={`${title}, as a table`}>{table}</Scrolls>
      </details>
    </figure>
  );
}
