/** Around every chart: its caption, its own boundary for failures, and the same figures as a table. */
import type { ReactNode } from 'react';
import { FailureBoundary } from '../app/failure-boundary';
import { Scrolls } from '../app/scrolls';

interface ChartFrameProps {
  title: string;
  /** What is to be seen, in a sentence. */
  caption: ReactNode;
  table: ReactNode;
  children: ReactNode;
}

export function ChartFrame({ title, caption, table, children }: ChartFrameProps) {
  return (
    <figure className="chart-frame">
      <figcaption>
        <h2>{title}</h2>
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
