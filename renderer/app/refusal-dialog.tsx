/** Says what was not done and why, one sentence a problem. */
import { useEffect, useRef } from 'react';
import { useView } from '../state/view-store';

export function RefusalDialog() {
  const refusal = useView((view) => view.refusal);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (refusal) dialog.current?.showModal();
    else dialog.current?.close();
  }, [refusal]);
  return (
    <dialog
      ref={dialog}
      className="refusal"
      aria-labelledby="refusal-title"
      onClose={() => useView.setState({ refusal: null })}
    >
      <h2 id="refusal-title">{refusal?.title}</h2>
      <ul>
        {refusal?.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <button type="button" onClick={() => dialog.current?.close()}>
        Close
      </button>
    </dialog>
  );
}
