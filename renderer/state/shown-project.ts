/**
 * The project that everything beside the fields is worked out for. While a value cannot be used that is the last one
 * that could be, as it stood when nothing was half typed: the first digit of a number is not what the person meant.
 */
import type { Project } from '../../sim/project/document';
import { useDocument, useSettled } from './document-store';
import { problemsOf } from './problems';

let lastGood: Project = useDocument.getState().project;

function note(): void {
  const { project } = useDocument.getState();
  if (useSettled.getState().isSettled && problemsOf(project).length === 0) lastGood = project;
}

useDocument.subscribe(note);
useSettled.subscribe(note);

/** @param project the one on the screen */
export function shownProject(project: Project): Project {
  if (problemsOf(project).length === 0) return project;
  // The same in the unit that the fields are in.
  if (lastGood.display !== project.display) lastGood = { ...lastGood, display: project.display };
  return lastGood;
}

export function useShownProject(): Project {
  return useDocument(({ project }) => shownProject(project));
}

/** The same outside a panel. */
export function shownProjectNow(): Project {
  return shownProject(useDocument.getState().project);
}
