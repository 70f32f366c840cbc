/**
 * The text of a field while somebody types in it. The value itself is kept by whoever shows the field and changes only
 * through an edit: showing it rounded, or in another unit, never touches it.
 */
import { useEffect, useRef, useState } from 'react';
import { isBareNumber } from './parse-quantity';

/** What a text says; null is what an empty field says where that is allowed. */
export type Reading = { ok: true; value: number | null; understood: string } | { ok: false; sentence: string };

interface EntryOptions {
  value: number | null;
  /** The text of a value that is not being edited. */
  show: (value: number | null) => string;
  read: (text: string) => Reading;
  /** Changes when `show` shows in other units. */
  style: string;
  onChange: (value: number | null) => void;
  onGestureStart?: (() => void) | undefined;
  onGestureEnd?: (() => void) | undefined;
}

export interface Entry {
  text: string;
  /** What a text that is more than a bare number comes to. */
  understood: string | undefined;
  /** Why the text cannot be read; held back until the typing pauses. */
  sentence: string | undefined;
  /** Whether somebody is in the middle of typing, so that complaints can wait. */
  isTyping: boolean;
  type: (text: string) => void;
  /** Enter, or leaving the field: the text gives way to the value unless it was not taken. */
  settle: () => void;
  /** Escape: back to what stood there; false when there is nothing to take back. */
  restore: () => boolean;
}

const PAUSE_MS = 600;

export function useEntry(options: EntryOptions): Entry {
  const { value, show, read, style, onChange, onGestureStart, onGestureEnd } = options;
  const [draft, setDraft] = useState<string | null>(null);
  const [isTyping, setTyping] = useState(false);
  const [sent, setSent] = useState(value);
  const [seen, setSeen] = useState({ value, style });
  const burst = useRef<{ before: number | null } | null>(null);
  const reading = draft === null ? null : read(draft);

  if (value !== seen.value || style !== seen.style) {
    setSeen({ value, style });
    const changedElsewhere = value !== seen.value && value !== sent;
    const shownAnew = style !== seen.style && reading?.ok === true;
    if (changedElsewhere || shownAnew) setDraft(null);
  }

  // biome-ignore lint/correctness/useExhaustiveDependencies: every keystroke (a new draft) starts the pause anew.
  useEffect(() => {
    if (!isTyping) return;
    const pause = setTimeout(() => setTyping(false), PAUSE_MS);
    return () => clearTimeout(pause);
  }, [isTyping, draft]);

  const endBurst = useRef(() => {});
  endBurst.current = () => {
    if (burst.current === null) return;
    burst.current = null;
    onGestureEnd?.();
  };
  useEffect(() => () => endBurst.current(), []);

  const send = (next: number | null) => {
    if (next === value) return;
    setSent(next);
    onChange(next);
  };

  return {
    text: draft ?? show(value),
    understood: reading?.ok && draft !== null && !isBareNumber(draft) ? reading.understood : undefined,
    sentence: reading?.ok === false && !isTyping ? reading.sentence : undefined,
    isTyping,
    type: (text) => {
      if (burst.current === null) {
        burst.current = { before: value };
        onGestureStart?.();
      }
      setDraft(text);
      setTyping(true);
      const { before } = burst.current;
      const next = read(text);
      // Typing something and taking it out again is no edit, even where the text shows the value rounded.
      if (text === show(before)) send(before);
      else if (next.ok) send(next.value);
    },
    settle: () => {
      setTyping(false);
      endBurst.current();
      if (reading?.ok && (reading.value === value || draft === show(value))) setDraft(null);
    },
    restore: () => {
      if (draft === null) return false;
      if (burst.current !== null) send(burst.current.before);
      setDraft(null);
      setTyping(false);
      endBurst.current();
      return true;
    },
  };
}
