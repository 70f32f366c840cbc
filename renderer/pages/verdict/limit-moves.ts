/** What a line that is dragged does to the show limit: one undo step a gesture. */
import { beginGesture, edit, endGesture } from '../../state/document-store';
import { withSection } from '../../state/edits';

export const limitMoves = {
  onLimitChange: (mm: number): void => edit(withSection('limits', { showGapMm: mm })),
  onGestureStart: beginGesture,
  onGestureEnd: endGesture,
};

export type LimitMoves = typeof limitMoves;
