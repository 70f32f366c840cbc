/**
 * The project that the figures on the screen are for. It follows an edit at once where nothing has to be simulated
 * anew; else it comes with the first new figures, or when they are late, so that the page is not drawn twice while
 * the processor is needed for the rings.
 */
import { create } from 'zustand';
import type { Project } from '../../sim/project/document';
import { useDocument } from './document-store';
import { needsStage, type RunState, useRun } from './run-store';
import { shownProjectNow } from './shown-project';
import { useView } from './view-store';

/** Longer than a preview takes; figures that do not fit are softened only a little later. */
const LONGEST_MS = 150;

export interface FiguresOnScreen extends Pick<RunState, 'outcomes' | 'lastByName' | 'failures'> {
  project: Project;
}

function figuresNow(): FiguresOnScreen {
  const { outcomes, lastByName, failures } = useRun.getState();
  return { project: shownProjectNow(), outcomes, lastByName, failures };
}

export const useFiguresOnScreen = create<FiguresOnScreen>()(figuresNow);

let late: ReturnType<typeof setTimeout> | undefined;

function follow(): void {
  clearTimeout(late);
  late = undefined;
  useFiguresOnScreen.setState(figuresNow());
}

/** Whether only figures differ, so that each method still stands in its place. */
function isSameMethods(a: Project, b: Project): boolean {
  return a.methods.length === b.methods.length && a.methods.every(({ name }, i) => name === b.methods[i]?.name);
}

useDocument.subscribe(() => {
  const project = shownProjectNow();
  const { switchedOff } = useView.getState();
  const isNew = project.methods.some(({ name }, i) => !switchedOff.includes(name) && needsStage(project, i, 'preview'));
  if (isNew && isSameMethods(project, useFiguresOnScreen.getState().project)) late ??= setTimeout(follow, LONGEST_MS);
  else follow();
});

// What was shown last is only noted when an edit is made, and changes nothing on the screen by itself.
useRun.subscribe((run, before) => {
  if (run.outcomes !== before.outcomes || run.failures !== before.failures) follow();
});
