import { type ReactNode, useId, useState } from 'react';
import { FieldError, Label, Text } from 'react-aria-components';
import './inputs.css';

interface Help {
  isOpen: boolean;
  panelId: string;
  toggle: () => void;
}

/** Whether a field's help is open; one call a field, shared by its head and its notes. */
export function useHelp(): Help {
  const [isOpen, setOpen] = useState(false);
  const panelId = useId();
  return { isOpen, panelId, toggle: () => setOpen(!isOpen) };
}

/** The visible label, and the small "?" that opens the field's one sentence of help. */
export function FieldHead({ label, help, state }: { label: string; help: string | undefined; state: Help }) {
  return (
    <span className="field-head">
      <Label className="field-label">{label}</Label>
      {help !== undefined && (
        <button
          type="button"
          className="field-help-button"
          aria-label={`About ${label}`}
          aria-expanded={state.isOpen}
          aria-controls={state.panelId}
          onClick={state.toggle}
        >
          ?
        </button>
      )}
    </span>
  );
}

interface FieldNotesProps {
  problem: string | undefined;
  help: string | undefined;
  origin: ReactNode;
  state: Help;
}

/** Under the field: what is wrong with it, its help while open, and where its figure comes from. */
export function FieldNotes({ problem, help, origin, state }: FieldNotesProps) {
  const hasOrigin = origin !== undefined && origin !== null && origin !== '';
  return (
    <>
      <FieldError className="field-problem">{problem}</FieldError>
      {help !== undefined && (
        <span id={state.panelId} className="field-help" hidden={!state.isOpen}>
          {help}
        </span>
      )}
      {hasOrigin && (
        <Text slot="description" className="field-origin">
          {origin}
        </Text>
      )}
    </>
  );
}
