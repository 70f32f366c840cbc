/** What is wrong with the project as it stands, for the fields it concerns. */

import type { Project } from '../../sim/project/document';
import type { Problem } from '../../sim/project/problem';
import { checkProject } from '../../sim/reading/checks';
import { useDocument } from './document-store';
import { PAGES, type Page } from './view-store';

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

/** The page that has the field at this key path; the limits stand on two. */
function hasField(page: Page, path: string): boolean {
  if (path.startsWith('limits.')) return page === 'verdict' || page === 'piece';
  if (path.startsWith('methods[')) return page === 'methods';
  if (path.startsWith('explain.')) return page === 'explain';
  return page === (path.startsWith('run.') ? 'verdict' : 'piece');
}

/** Where a problem is mended. */
export interface Mending {
  page: Page;
  /** Whether that is the page on the screen, so that its field says what is wrong. */
  isHere: boolean;
}

export function mendingOf({ path }: Problem, shown: Page): Mending {
  if (hasField(shown, path)) return { page: shown, isHere: true };
  return { page: PAGES.find((page) => hasField(page, path)) ?? shown, isHere: false };
}

/** Why nothing can be printed or exported just now, in a sentence; null when it can. */
export function whyNoOutput(): string | null {
  const { project } = useDocument.getState();
  return problemsOf(project).length > 0 ? 'A value cannot be used. Mend it first.' : null;
}
