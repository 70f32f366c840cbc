/** The few sentences that somebody needs who sees the program for the first time: shown until they are put away. */
import { useEffect } from 'react';
import { announce, showOrientation, showPage, useView } from '../state/view-store';
import { IS_MAC } from './is-mac';
import { shortcutText } from './shortcut';
import './orientation.css';
import { WorkRing } from './work-ring';

const ID = 'orientation';
const COMMANDS_KEYS = shortcutText({ key: 'k', mod: true, shift: false }, IS_MAC);

/** Shows them again because the person asked, and goes there. */
export function openOrientation(): void {
  showOrientation();
  requestAnimationFrame(() => document.getElementById(ID)?.focus());
}

function putAway(): void {
  useView.setState({ orientation: 'put away' });
  announce('Put away. Help brings it back.');
  document.getElementById('page')?.focus({ preventScroll: true });
}

/** Tells those who listen, once at the start, that it is there. */
export function useOrientationSaid(): void {
  useEffect(() => {
    if (useView.getState().orientation === 'shown') announce('How to begin stands right after the answer.');
  }, []);
}

export function Orientation() {
  const isShown = useView((view) => view.orientation === 'shown');
  if (!isShown) return null;
  return (
    <section id={ID} className="orientation" aria-labelledby="orientation-title" tabIndex={-1}>
      <h2 id="orientation-title">How to begin</h2>
      <ol>
        <li>
          The line above answers the page’s question for the project that is open; at first that is a worked example.
        </li>
        <li>
          What you decide stands on the left, in a narrow window first; what follows from it stands beside or below, and
          moves with it.
        </li>
        <li>
          <WorkRing share={0.4} /> fills while figures are being refined. <WorkRing share={1} /> Settled: more rings
          would not change them much. Brackets say how far a figure may still be off.
        </li>
        <li>
          Put in your own ring{' '}
          <button type="button" className="in-line" onClick={() => showPage('piece')}>
            on the page Piece
          </button>
          , then weigh two ways of working under Methods. Undo takes any step back.
        </li>
      </ol>
      <p className="orientation-foot">
        <span>
          Commands ({COMMANDS_KEYS}) finds everything by name, a ? explains what stands beside it, Help (F1) brings this
          back.
        </span>
        <button type="button" onClick={putAway}>
          Put this away
        </button>
      </p>
    </section>
  );
}
