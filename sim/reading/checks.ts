/** Whether a project can be computed: every value by itself (the schema), then the values against each other. */
import type { Method, Project } from '../project/document';
import { fieldAt } from '../project/fields';
import { numberSentence, type Problem, pathText, reckonedLength, safeText, typedLength } from '../project/problem';
import { projectSchema } from '../project/schema';
import { fittingProblems } from './fitting';

type Display = Project['display'];

export type Verdict = { ok: true; project: Project } | { ok: false; problems: Problem[] };

const MOST_PROBLEMS = 50;

/** The project in a value of this file version, defaults filled in; or what is wrong with it, at most 50 problems, in `display`. */
export function validate(value: unknown, display: Display = 'metric'): Verdict {
  const outcome = projectSchema.safeParse(value);
  const problems = outcome.success
    ? fittingProblems(outcome.data, display)
    : outcome.error.issues.flatMap((issue) => problemsOf(issue, value, display));
  if (outcome.success && problems.length === 0) return { ok: true, project: outcome.data };
  return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
}

/** What keeps a project from being computed, in the unit it displays; empty when nothing does. */
export function checkProject(project: Project): Problem[] {
  const verdict = validate(project, project.display);
  return verdict.ok ? [] : verdict.problems;
}

interface Issue {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly keys?: readonly string[];
}

function problemsOf(issue: Issue, value: unknown, display: Display): Problem[] {
  const path = pathText(issue.path);
  const field = fieldAt(path);
  if (field !== undefined) return [{ path, sentence: numberSentence(field, valueAt(value, issue.path), display) }];
  if (issue.code !== 'unrecognized_keys') return [{ path, sentence: issue.message }];
  return (issue.keys ?? []).map((key) => {
    return { path: pathText([...issue.path, key]), sentence: `"${safeText(key)}" ${issue.message}` };
  });
}

function valueAt(value: unknown, keys: readonly PropertyKey[]): unknown {
  return keys.reduce(
    (at: unknown, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
    value,
  );
}

/** Above this a crosscut stave no longer lies safely on a gauge; common practice. */
const SENSIBLE_CROSSCUT_MM = 200;

/** What is allowed and yet worth saying before anyone trusts the figures. */
export function warnings(project: Project): Problem[] {
  const { piece, limits, methods, display } = project;
  const found: Problem[] = [];
  if (piece.grain === 'alongRing' && piece.heightMm > SENSIBLE_CROSSCUT_MM) {
    found.push({
      path: 'piece.heightMm',
      sentence:
        `Height ${typedLength(piece.heightMm, display)} is a lot to crosscut from a strip with the grain around the ring; ` +
        `above ${reckonedLength(SENSIBLE_CROSSCUT_MM, display)} let the grain run up the stave and rip it.`,
    });
  }
  if (limits.remedyGapMm < Math.max(limits.showGapMm, limits.hiddenGapMm)) {
    found.push({
      path: 'limits.remedyGapMm',
      sentence:
        `Remedy limit ${typedLength(limits.remedyGapMm, display)} is below a gap limit, so a gap over its limit is never put right: ` +
        'such a ring counts as scrap.',
    });
  }
  methods.forEach((method, index) => {
    found.push(...methodWarnings(project, method, `methods[${index}]`));
  });
  return found;
}

function methodWarnings(project: Project, method: Method, path: string): Problem[] {
  const found: Problem[] = [];
  if (project.run.rule === 'touch' && method.assembly.by === 'oneByOne') {
    found.push({
      path: `${path}.assembly.by`,
      sentence:
        'Glued one by one is always computed by contact; the touch rule is only a preview of gluing all at once.',
    });
  }
  if (method.test.kind !== 'none' && method.test.maxRounds === 0) {
    found.push({
      path: `${path}.test.maxRounds`,
      sentence: 'A test piece is chosen with 0 test rounds, so no test is made. Give the rounds, or choose no test.',
    });
  }
  return found;
}
