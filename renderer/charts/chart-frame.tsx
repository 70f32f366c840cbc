/** Around every chart: its caption, its own boundary for failures, the same figures as a table, and the way to keep it. */
import { type ReactNode, useRef, useState } from 'react';
import type { FigureTable } from '../../sim/export/figure-table';
import { SaveMenu, type WayToSave } from '../exports/save-menu';
import { picturesOf, tableOf } from '../exports/ways-to-save';
import { ExplainedHead } from '../inputs/explained';
import { FailureBoundary } from '../parts/failure-boundary';
import { useHost } from '../parts/host-context';
import { Scrolls } from '../parts/scrolls';

interface ChartFrameProps {
  title: string;
  /** What is to be seen, in a sentence. */
  caption: ReactNode;
  /** How far its figures are worked out, beside the title. */
  mark?: ReactNode;
  table: ReactNode;
  /** The same figures with all their digits, for a file. */
  figures?: (() => FigureTable) | undefined;
  /** Whether there is anything to keep yet. */
  isDrawn?: boolean;
  /** What else can be kept from here. */
  moreToSave?: readonly WayToSave[];
  children: ReactNode;
}

export function ChartFrame(props: ChartFrameProps) {
  const { title, caption, mark, table, figures, isDrawn = true, moreToSave = [], children } = props;
  const host = useHost();
  const figure = useRef<HTMLElement>(null);
  const [isTableOpen, setTableOpen] = useState(false);
  const pictures = picturesOf(host, {
    title,
    description: () => figure.current?.querySelector('figcaption > p'),
    blocks: () => [...(figure.current?.children ?? [])],
  });
  const tables = figures ? [tableOf(host, title, figures)] : [];
  return (
    <figure className="chart-frame" ref={figure}>
      <figcaption>
        <div className="chart-title">
          <div className="headed">
            <h2>{title}</h2>
            <ExplainedHead head={title} />
          </div>
          {mark}
          <SaveMenu what={title} ways={[...pictures, ...tables, ...moreToSave]} isDisabled={!isDrawn} />
        </div>
        <p>{caption}</p>
      </figcaption>
      <FailureBoundary what={`chart "${title}"`}>{children}</FailureBoundary>
      <details className="table-twin" onToggle={(event) => setTableOpen(event.currentTarget.open)}>
        <summary>{title}, as a table</summary>
        {isTableOpen && (
          <FailureBoundary what={`table "${title}"`}>
            <Scrolls label={`${title}, as a table`}>{table}</Scrolls>
          </FailureBoundary>
        )}
      </details>
    </figure>
  );
}
