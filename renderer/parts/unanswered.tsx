/** What stands in place of an answer while a value cannot be used: that there is none yet, and the way to the field. */
import { fieldAt } from '../../sim/project/fields';
import type { Problem } from '../../sim/project/problem';
import { mendingOf } from '../state/problems';
import { PAGE_NAMES, showPage, useView } from '../state/view-store';

export const CANNOT_YET = 'This cannot be worked out yet.';

/** The page that has the field may have to be drawn first, and the field says that it is wrong only after a pause. */
const LOOKS = 60;

function focusField(looksLeft = LOOKS): void {
  const wrong = document.querySelector<HTMLElement>('.page-inputs :is([aria-invalid="true"], [data-invalid])');
  const isEntry = wrong?.matches('input, textarea');
  const entry = isEntry ? wrong : wrong?.querySelector<HTMLElement>('input, textarea, .choice-button');
  if (entry) entry.focus();
  else if (looksLeft > 0) requestAnimationFrame(() => focusField(looksLeft - 1));
}

/** One line a problem. What its field says beside it is not said again. */
export function Unanswered({ problems }: { problems: readonly Problem[] }) {
  const shown = useView((view) => view.page);
  return (
    <ul className="unanswered">
      {problems.map((problem) => {
        const { page, isHere } = mendingOf(problem, shown);
        const label = fieldAt(problem.path)?.label;
        const place = label ? `“${label}”` : 'what is to be mended';
        const go = (): void => {
          showPage(page);
          focusField();
        };
        return (
          <li key={`${problem.path} ${problem.sentence}`}>
            {!isHere && <span>{problem.sentence} </span>}
            <button type="button" className="link" onClick={go}>
              Go to {place}
              {isHere ? '' : ` on the page ${PAGE_NAMES[page]}`}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
