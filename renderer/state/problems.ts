/** What is wrong with the project as it stands, for the fields it concerns. */

import type { Project } from '../../sim/project/document';
import type { Problem } from '../../sim/project/problem';
import { checkProject } from '../../sim/reading/checks';
import { useDocument } from './document-store';

const NONE: readonly Problem[] = [];
const known = new WeakMap<Project, readonly Problem[]>();

/**
 * Empty when the project can be simulated, and then always the same. Every field asks, so each project is looked
 * through once.
 */
export function problemsOf(project: Project): readonly Problem[] {
  const seen = known.get(project);
  if (seen) return seen;
  const found = checkProject(project);
  const problems = found.length === 0 ? NONE : found;
  known.set(project, problems);
  return problems;
}

export function useProblems(): readonly Problem[] {
  return useDocument(({ project }) => problemsOf(project));
}

/**
 * The sentence for the field at this key path, such as `methods[0].blade.kerfMm`, if its value cannot be used. Asks for
 * no more than that, so that a field is not drawn anew whenever another one changes.
 */
export function useProblemAt(path: string): string | undefined {
  return useDocument(({ project }) => problemsOf(project).find((problem) => problem.path === path)?.sentence);
}

/** Whether anything at or under this key path cannot be used. */
export function useHasProblemUnder(path: string): boolean {
  return useDocument(({ project }) => problemsOf(project).some((problem) => problem.path.startsWith(path)));
}
