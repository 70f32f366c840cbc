/** One method from top to bottom: its name and what can be done with it, then its choices. */
import { memo } from 'react';
import type { Method } from '../../../sim/project/document';
import { ChoiceAt } from '../../parts/field-at';
import { MethodMark, markOf } from '../../parts/method-mark';
import { MINUTES_KEYS, PARTS_AFTER_SEQUENCE, PARTS_BEFORE_SEQUENCE } from '../../parts/method-parts';
import { beginGesture, edit, endGesture } from '../../state/document-store';
import { withMethod, withMethodRenamed } from '../../state/edits';
import { useProblemAt } from '../../state/problems';
import { renameInView, setSwitchedOff } from '../../state/view-store';
import { DiffersFrom, usePartDifference } from './differs';
import { MethodTools } from './method-tools';
import { Figure, PartChoice } from './part-choice';

interface MethodColumnProps {
  method: Method;
  index: number;
  count: number;
  isOff: boolean;
  /** Whether it is the only one that takes part. */
  isLastOn: boolean;
}

/** Drawn anew only when this method changes, not whenever another one does. */
export const MethodColumn = memo(function MethodColumn({ method, index, count, isOff, isLastOn }: MethodColumnProps) {
  const path = `methods[${index}]`;
  const sequenceDifference = usePartDifference(method, 'sequence');
  const wideFaceDifference = usePartDifference(method, 'wideFace');
  return (
    <li className="method-column" data-off={isOff || undefined}>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot take its rows from the columns beside it. */}
      <div role="group" aria-label={`Method ${markOf(index).letter}: ${method.name}`} className="method-rows">
        <div className="method-head">
          <NameField method={method} index={index} />
          <MethodTools method={method} index={index} count={count} />
          <label className="switch">
            <input
              type="checkbox"
              checked={!isOff}
              disabled={isLastOn}
              onChange={(event) => setSwitchedOff(method.name, !event.target.checked)}
            />
            Takes part in the comparison
          </label>
        </div>
        {PARTS_BEFORE_SEQUENCE.map((part) => (
          <PartChoice key={part.name} method={method} index={index} part={part} />
        ))}
        <div className="method-part">
          <ChoiceAt
            path={`${path}.sequence`}
            layout="column"
            value={method.sequence}
            onChange={(sequence) => edit(withMethod(index, (method) => ({ ...method, sequence })))}
          />
          <DiffersFrom difference={sequenceDifference} />
          <ChoiceAt
            path={`${path}.wideFace`}
            value={method.wideFace}
            onChange={(wideFace) => edit(withMethod(index, (method) => ({ ...method, wideFace })))}
          />
          <DiffersFrom difference={wideFaceDifference} />
        </div>
        {PARTS_AFTER_SEQUENCE.map((part) => (
          <PartChoice key={part.name} method={method} index={index} part={part} />
        ))}
        <div className="method-part">
          {MINUTES_KEYS.map((key) => (
            <Figure key={key} method={method} index={index} section="minutes" name={key} value={method.minutes[key]} />
          ))}
        </div>
      </div>
    </li>
  );
});

function NameField({ method, index }: { method: Method; index: number }) {
  const problem = useProblemAt(`methods[${index}].name`);
  const rename = (name: string): void => {
    renameInView(method.name, name);
    edit(withMethodRenamed(index, name));
  };
  const problemId = `method-${index}-name-problem`;
  return (
    <div className="method-name-field">
      <MethodMark index={index} />
      <span className="method-letter" aria-hidden="true">
        {markOf(index).letter}
      </span>
      <textarea
        rows={1}
        aria-label={`Name of method ${markOf(index).letter}`}
        value={method.name}
        onChange={(event) => rename(event.target.value.replace(/\s*\n\s*/g, ' '))}
        onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}
        onFocus={beginGesture}
        onBlur={endGesture}
        aria-invalid={problem !== undefined || undefined}
        aria-describedby={problem ? problemId : undefined}
        spellCheck={false}
      />
      {problem && (
        <p id={problemId} className="problem">
          {problem}
        </p>
      )}
    </div>
  );
}
