/** What is said of the cautions where cuts are shown and the list is not: one line, and the way to the list. */
import { CAUTIONS_TITLE, FIRST_CAUTION } from '../../sim/wording/cautions';
import { showPage } from '../state/view-store';

/** Of the list's head on the page Piece. */
export const CAUTIONS_ID = 'cautions-title';

function showCautions(): void {
  showPage('piece');
  requestAnimationFrame(() => {
    const head = document.getElementById(CAUTIONS_ID);
    head?.focus({ preventScroll: true });
    head?.scrollIntoView();
  });
}

export function CautionsLine() {
  return (
    <p className="cautions-line">
      {FIRST_CAUTION}{' '}
      <button type="button" className="in-line" onClick={showCautions}>
        {CAUTIONS_TITLE}, on Piece
      </button>
    </p>
  );
}
