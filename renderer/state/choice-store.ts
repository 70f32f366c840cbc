/** A question to the person that waits for one of a few answers. */
import { create } from 'zustand';

export interface Answer {
  label: string;
  /** A second, quieter line of the button. */
  detail?: string;
  take: () => void;
}

export interface Choice {
  title: string;
  lines: readonly string[];
  answers: readonly Answer[];
  /** Whether it may be left without an answer; not where leaving it would lose something. */
  mayWait: boolean;
}

export interface ChoiceState {
  choice: Choice | null;
}

export const useChoice = create<ChoiceState>()(() => ({ choice: null }));

export function askToChoose(choice: Choice): void {
  useChoice.setState({ choice });
}

/** Takes the question away and does what was answered. */
export function take(answer: Answer): void {
  useChoice.setState({ choice: null });
  answer.take();
}
