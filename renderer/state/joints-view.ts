/** What is looked at on the page of joints. Kept while the window is open, never part of the project. */
import { create } from 'zustand';

const RING_CHOICES = ['typical', 'good', 'bad', 'number'] as const;
export type RingChoice = (typeof RING_CHOICES)[number];

export interface JointsViewState {
  /** Name of the method looked at; null until one is chosen. */
  lookedAtMethod: string | null;
  ringChoice: RingChoice;
  /** The ring's number as the person counts, from 1. */
  ringNumber: number;
  /** How many times wider than they are gaps are drawn; null: as suits the ring. */
  exaggeration: number | null;
  /** Share of good pieces that the sources are asked to allow, 0…1. */
  wantedYield: number;
}

export const useJointsView = create<JointsViewState>()(() => ({
  lookedAtMethod: null,
  ringChoice: 'typical',
  ringNumber: 1,
  exaggeration: null,
  wantedYield: 0.95,
}));
