/** How the page Verdict shows the gaps, and which method the others are held against. Never part of the project. */
import { create } from 'zustand';

const GAP_VIEWS = ['dots', 'running', 'bars'] as const;
export type GapView = (typeof GAP_VIEWS)[number];

export interface VerdictViewState {
  gapView: GapView;
  /** Name of the method; null: the one that is recommended. */
  heldAgainst: string | null;
}

export const useVerdictView = create<VerdictViewState>()(() => ({ gapView: 'dots', heldAgainst: null }));
