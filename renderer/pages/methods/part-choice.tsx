/** One part of a method: the plain choice, what it means, and the figures behind it with where each comes from. */
import { useState } from 'react';
import type { Method } from '../../../sim/project/document';
import { applyPreset, figureOrigin, nearestPreset, originText, PRESETS, presetOf } from '../../../sim/project/presets';
import { ChoiceField } from '../../inputs/choice-field';
import { FieldAt } from '../../parts/field-at';
import type { Part } from '../../parts/method-parts';
import { edit } from '../../state/document-store';
import { type MethodSection, withFigure, withMethod } from '../../state/edits';
import { useHasProblemUnder } from '../../state/problems';
import { DiffersFrom, figureValue, useFigureDifference, usePartDifference } from './differs';

const OWN = 'own';

interface PartChoiceProps {
  method: Method;
  index: number;
  part: Part;
}

export function PartChoice({ method, index, part }: PartChoiceProps) {
  const preset = presetOf(method, part.name);
  const nearest = preset === null ? nearestPreset(method, part.name) : null;
  const difference = usePartDifference(method, part.name);
  const choices = PRESETS[part.name].map(({ id, label }) => ({ value: id, label }));
  const choose = (id: string): void => {
    if (id !== OWN) edit(withMethod(index, (method) => applyPreset(method, part.name, id)));
  };
  return (
    <div className="method-part">
      <ChoiceField
        label={part.question}
        layout="menu"
        value={preset?.id ?? OWN}
        choices={preset ? choices : [...choices, { value: OWN, label: 'Own figures' }]}
        onChange={choose}
      />
      <DiffersFrom difference={difference} />
      <p className="note">{preset?.explanation ?? ownExplanation(method, part)}</p>
      {nearest && (
        <button
          type="button"
          className="quiet"
          aria-label={`${part.question} in ${method.name}: back to “${nearest.label}”`}
          onClick={() => choose(nearest.id)}
        >
          Back to “{nearest.label}”
        </button>
      )}
      <FigureList
        path={`methods[${index}].${part.name}`}
        differing={difference?.keys.length ?? 0}
        figures={part.figures}
        render={(key) => (
          <Figure
            key={key}
            method={method}
            index={index}
            section={part.name}
            name={key}
            value={figureValue(method, part.name, key)}
            origin={originText(figureOrigin(method, `${part.name}.${key}`))}
          />
        )}
      />
    </div>
  );
}

/** What a part is nearest to when its figures are no preset's. */
function ownExplanation(method: Method, { name, figures }: Part): string {
  const nearest = figures
    .map((key) => figureOrigin(method, `${name}.${key}`))
    .map((origin) => (origin.kind === 'preset' ? origin.label : origin.nearest))
    .find((label) => label !== null);
  return nearest ? `Started from “${nearest}”, with figures of your own.` : 'Figures of your own.';
}

interface FigureListProps {
  path: string;
  /** How many are not as in the method that this one is held against. */
  differing: number;
  figures: readonly string[];
  render: (key: string) => React.JSX.Element;
}

/** Folded away, and not even made, until wanted; opened of itself while one of its figures cannot be used. */
function FigureList({ path, differing, figures, render }: FigureListProps) {
  const [isWanted, setWanted] = useState(false);
  const isOpen = useHasProblemUnder(`${path}.`) || isWanted;
  return (
    <details className="figure-list" open={isOpen} onToggle={(event) => setWanted(event.currentTarget.open)}>
      <summary>Figures{differing > 0 && `, ${differing} ${differing === 1 ? 'differs' : 'differ'}`}</summary>
      {isOpen && <div className="figure-fields">{figures.map(render)}</div>}
    </details>
  );
}

interface FigureProps {
  method: Method;
  index: number;
  section: MethodSection;
  /** The key it has in its section. */
  name: string;
  value: number | string | null;
  origin?: string;
}

export function Figure({ method, index, section, name, value, origin }: FigureProps) {
  const other = useFigureDifference(method, section, name);
  return (
    <FieldAt
      path={`methods[${index}].${section}.${name}`}
      value={value}
      origin={other ? <FigureOrigin own={origin} other={other} /> : origin}
      onChange={(next) => edit(withFigure(index, section, name, next))}
    />
  );
}

function FigureOrigin({ own, other }: { own: string | undefined; other: string }) {
  return (
    <>
      {own}
      <span className="differs">{other}</span>
    </>
  );
}
