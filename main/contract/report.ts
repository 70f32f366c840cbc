/** What the program that draws the sheets takes and gives: it is built from the pages and loaded by path where a command needs it. */
import type { TestValue } from '../../sim/decide/test-value';
import type { Project } from '../../sim/project/document';
import type { BudgetAnswer } from '../../sim/questions/questions';
import type { MethodResult } from '../../sim/run/prediction';

/** For whom a sheet is: one page that explains, or all that the maker works from. */
export type SheetKind = 'client' | 'maker';

export type Paper = 'a4' | 'letter';

export interface SheetInput {
  project: Project;
  /** Of the methods compared, at the limits of the project, each under its present name. */
  results: readonly MethodResult[];
  /** The method the sheet is about, one of `results`. */
  result: MethodResult;
  paper: Paper;
}

/** What the sheets say besides about the one method they are about, the client's of the budget alone; null while it is not worked out. */
export interface MakerAnswers {
  budget: BudgetAnswer | null;
  testValue: TestValue | null;
}

export interface ReportProgram {
  /** A whole HTML document: styles inside, drawings as SVG, no scripts, nothing loaded from elsewhere. */
  renderReport(input: SheetInput, kind: SheetKind, answers: MakerAnswers): string;
}
