/** What can be done with a whole method: move, duplicate, remove. The focus stays with the method it was done to. */
import { flushSync } from 'react-dom';
import type { Method } from '../../../sim/project/document';
import { edit } from '../../state/document-store';
import { withMethodCopied, withMethodMoved, withoutMethod } from '../../state/edits';
import { MOST_METHODS } from '../../state/starting-methods';

interface MethodToolsProps {
  method: Method;
  index: number;
  count: number;
}

type Tool = 'left' | 'right' | 'remove';

const idOf = (tool: Tool, index: number): string => `method-${index}-${tool}`;

/** Focuses the first of these that can be used. */
function focusOn(ids: readonly string[]): void {
  for (const id of ids) {
    const button = document.getElementById(id);
    if (!(button instanceof HTMLButtonElement) || button.disabled) continue;
    button.focus();
    return;
  }
}

export function MethodTools({ method: { name }, index, count }: MethodToolsProps) {
  const move = (by: -1 | 1): void => {
    flushSync(() => edit(withMethodMoved(index, by)));
    const towards = by === 1 ? 'right' : 'left';
    // At the end of the row only the way back is left.
    focusOn([idOf(towards, index + by), idOf(by === 1 ? 'left' : 'right', index + by)]);
  };
  const remove = (): void => {
    flushSync(() => edit(withoutMethod(index)));
    focusOn([idOf('remove', index), idOf('remove', index - 1), idOf('left', index - 1)]);
  };
  return (
    <div className="method-tools">
      <button
        id={idOf('left', index)}
        type="button"
        className="quiet"
        disabled={index === 0}
        aria-label={`Move ${name} to the left`}
        onClick={() => move(-1)}
      >
        ←
      </button>
      <button
        id={idOf('right', index)}
        type="button"
        className="quiet"
        disabled={index === count - 1}
        aria-label={`Move ${name} to the right`}
        onClick={() => move(1)}
      >
        →
      </button>
      <button
        type="button"
        className="quiet"
        disabled={count >= MOST_METHODS}
        aria-label={`Duplicate ${name}`}
        onClick={() => edit(withMethodCopied(index))}
      >
        Duplicate
      </button>
      <button
        id={idOf('remove', index)}
        type="button"
        className="quiet"
        disabled={count === 1}
        aria-label={`Remove ${name}`}
        onClick={remove}
      >
        Remove
      </button>
    </div>
  );
}
