/** What the strips give with one method, the chance of coming up a stave short, and every cut in its order. */
import { useState } from 'react';
import type { Project } from '../../../sim/project/document';
import { TextTableView } from '../../charts/text-table';
import { ChoiceField } from '../../inputs/choice-field';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { Scrolls } from '../../parts/scrolls';
import { cuttingSection } from '../../report/maker-sections';
import { useView } from '../../state/view-store';

/** @param project one that can be computed */
export function CuttingOrder({ project }: { project: Project }) {
  const [wanted, setWanted] = useState('');
  const fractions = useView((view) => view.inchFractions);
  const names = project.methods.map(({ name }) => name);
  const method = project.methods.find(({ name }) => name === wanted) ?? project.methods[0];
  if (!method) return null;
  const { title, paragraphs, tables } = cuttingSection(project, method, fractions);
  const [strips, cuts] = tables;
  return (
    <section className="group worded" aria-labelledby="order-title">
      <h2 id="order-title">{title}</h2>
      <div className="order-method">
        <ChoiceField
          label="Cut as"
          layout="menu"
          value={method.name}
          choices={names.map((name) => ({ value: name, label: name }))}
          onChange={setWanted}
        />
      </div>
      {paragraphs.map((sentence) => (
        <p key={sentence}>{lengthsOnOneLine(sentence)}</p>
      ))}
      {strips && (
        <Scrolls label="Strips, table">
          <div className="table-twin">
            <TextTableView table={strips} />
          </div>
        </Scrolls>
      )}
      {cuts && (
        <details className="table-twin order-cuts">
          <summary>Every cut in its order</summary>
          <Scrolls label="Every cut in its order, table">
            <TextTableView table={cuts} />
          </Scrolls>
        </details>
      )}
    </section>
  );
}
