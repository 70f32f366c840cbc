/** What the sheets are made from. */
import type { SourceBudget } from '../../sim/budget/budget';
import type { SourceIndices } from '../../sim/budget/source-sensitivity';
import type { TestValue } from '../../sim/decide/test-value';
import type { Project } from '../../sim/project/document';
import type { MethodResult } from '../../sim/run/prediction';

/** For whom a sheet is: one page that explains, or all that the maker works from. */
export const SHEET_KINDS = ['client', 'maker'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export const PAPERS = ['a4', 'letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** What the maker's sheet says besides about the one method it is about; null while it is not worked out. */
export interface MakerAnswers {
  budget: { budget: SourceBudget; indices: SourceIndices[] } | null;
  testValue: TestValue | null;
}

export interface SheetInput {
  project: Project;
  /** Of the methods compared, at the limits of the project, each under its present name. */
  results: readonly MethodResult[];
  /** The method the sheet is about, one of `results`. */
  result: MethodResult;
  paper: Paper;
}

/** The place of a result's method in the project. */
export function methodIndexOf({ methods }: Project, { prediction }: MethodResult): number {
  return methods.findIndex(({ name }) => name === prediction.name);
}
