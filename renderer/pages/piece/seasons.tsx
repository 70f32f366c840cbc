/** What a winter and a summer do to the ring. */
import type { Project } from '../../../sim/project/document';
import { TextTableView } from '../../charts/text-table';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { Scrolls } from '../../parts/scrolls';
import { seasonSection } from '../../report/maker-sections';

/** @param project one that can be computed */
export function Seasons({ project }: { project: Project }) {
  const { title, paragraphs, tables, list = [] } = seasonSection(project);
  return (
    <section className="group worded" aria-labelledby="seasons-title">
      <h2 id="seasons-title">{title}</h2>
      {[...list, ...paragraphs].map((sentence) => (
        <p key={sentence}>{lengthsOnOneLine(sentence)}</p>
      ))}
      {tables.map((table) => (
        <details key={title} className="table-twin">
          <summary>{title}, as a table</summary>
          <Scrolls label={`${title}, as a table`}>
            <TextTableView table={table} />
          </Scrolls>
        </details>
      ))}
    </section>
  );
}
