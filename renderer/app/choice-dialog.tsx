/** Asks the person to choose one of a few ways on. */
import { useEffect, useRef } from 'react';
import { take, useChoice } from '../state/choice-store';

export function ChoiceDialog() {
  const choice = useChoice((state) => state.choice);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (choice) dialog.current?.showModal();
    else dialog.current?.close();
  }, [choice]);
  return (
    <dialog
      ref={dialog}
      className="refusal"
      aria-labelledby="choice-title"
      onCancel={(event) => {
        if (choice && !choice.mayWait) event.preventDefault();
      }}
      onClose={() => {
        // A browser closes a dialog at the second Escape whatever it is told.
        if (choice && !choice.mayWait && useChoice.getState().choice === choice) dialog.current?.showModal();
        else useChoice.setState({ choice: null });
      }}
    >
      <h2 id="choice-title">{choice?.title}</h2>
      {choice?.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <div className="answers">
        {choice?.answers.map((answer) => (
          <button key={`${answer.label} ${answer.detail}`} type="button" onClick={() => take(answer)}>
            {answer.label}
            {answer.detail && <small>{answer.detail}</small>}
          </button>
        ))}
        {choice?.mayWait && (
          <button type="button" className="quiet" onClick={() => dialog.current?.close()}>
            Cancel
          </button>
        )}
      </div>
    </dialog>
  );
}
