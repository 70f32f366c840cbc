/** What of the edits can be kept so that it can be opened again. */

import type { Project } from '../../sim/project/document';
import { checkProject } from '../../sim/reading/checks';
import { problemsOf } from './problems';

/**
 * The project with each value that cannot be used replaced by the one that `good` has at the same place. The edits around
 * a value that is just being typed are kept that way.
 *
 * @param good a project without problems
 * @returns `good` itself when the values do not even fit together then
 */
export function keepableProject(project: Project, good: Project): Project {
  const problems = problemsOf(project);
  if (problems.length === 0) return project;
  const mended = structuredClone(project);
  for (const { path } of problems) {
    const keys = path.split(/[.[\]]+/).filter((key) => key !== '');
    copyAt(keys, good, mended);
  }
  return checkProject(mended).length === 0 ? mended : good;
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function copyAt(keys: readonly string[], from: unknown, to: unknown): void {
  const [key, ...rest] = keys;
  if (key === undefined || !isGroup(to)) return;
  const value = isGroup(from) ? from[key] : undefined;
  if (rest.length > 0) copyAt(rest, value, to[key]);
  else if (value === undefined) delete to[key];
  else to[key] = value;
}
