/** The project on the screen and its undo history. Every edit goes through `edit`, so that one gesture is one undo step. */
import { temporal } from 'zundo';
import { create } from 'zustand';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';

export interface DocumentState {
  project: Project;
}

const UNDO_STEPS = 200;

export const useDocument = create<DocumentState>()(
  temporal((): DocumentState => ({ project: exampleProject() }), {
    limit: UNDO_STEPS,
    equality: (past, current) => past.project === current.project,
  }),
);

/** The document before the gesture's first change was recorded, the changes after it are part of the same step. */
type Gesture = 'none' | 'untouched' | 'recorded';
let gesture: Gesture = 'none';

export interface SettledState {
  /** Whether no number is being typed and nothing dragged, so that the project on the screen is what the person means. */
  isSettled: boolean;
}

export const useSettled = create<SettledState>()(() => ({ isSettled: true }));

/** From here to `endGesture` all edits are one undo step: a drag, or a number while it is typed. */
export function beginGesture(): void {
  gesture = 'untouched';
  useSettled.setState({ isSettled: false });
}

export function endGesture(): void {
  gesture = 'none';
  useSettled.setState({ isSettled: true });
}

/** Changes the project. An edit that returns the same project is no edit. */
export function edit(change: (project: Project) => Project): void {
  const { project } = useDocument.getState();
  const next = change(project);
  if (next === project) return;
  const history = useDocument.temporal.getState();
  if (gesture === 'recorded') history.pause();
  useDocument.setState({ project: next });
  history.resume();
  if (gesture === 'untouched') gesture = 'recorded';
}

/** Puts another project on the screen; what was done to the former one cannot be undone any more. */
export function replaceProject(project: Project): void {
  endGesture();
  useDocument.setState({ project });
  useDocument.temporal.getState().clear();
}

export function undo(): void {
  endGesture();
  useDocument.temporal.getState().undo();
}

export function redo(): void {
  endGesture();
  useDocument.temporal.getState().redo();
}
