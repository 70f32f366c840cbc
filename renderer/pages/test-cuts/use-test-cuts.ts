/** What the page of test cuts is about: a method, its test piece, and what testing it is worth. */
import { useMemo } from 'react';
import type { Method, Project } from '../../../sim/project/document';
import type { Answers } from '../../../sim/questions/questions';
import {
  TEST_PIECE_KINDS,
  type TestPieceFigures,
  type TestPieceKind,
  testPieceFigures,
} from '../../../sim/testing/bench-card';
import { refusalSentence } from '../../../sim/wording/test-pieces';
import { type TestAnswer, testAnswer } from '../../../sim/wording/test-value';
import { useDocument } from '../../state/document-store';
import { useMethodShown } from '../../state/method-shown';
import { useProblems } from '../../state/problems';
import { useShownProject } from '../../state/shown-project';
import { type QuestionOutcome, useQuestion } from '../../state/use-question';

export type WorthOutcome = QuestionOutcome<Answers['testValue']>;

export interface TestedMethod {
  /** A project whose piece can be made; while the one on the screen cannot, the last one that could. */
  project: Project;
  index: number;
  method: Method;
  /** What the bench reads; a method without a test is looked at with a whole ring. */
  kind: TestPieceKind;
  pieces: readonly TestPiece[];
  /** Whether this is the project as it stands. */
  isFresh: boolean;
}

export interface TestPiece {
  kind: TestPieceKind;
  figures: TestPieceFigures;
  /** Why it cannot be used. */
  refusal: string | null;
}

const isTested = ({ test }: Method): boolean => test.kind !== 'none' && test.maxRounds > 0;

/** Place in the project of the method that the page shows: the one chosen, else the first with a test. */
export function useTestedIndex(): number {
  return useMethodShown(isTested);
}

function testPiecesOf(project: Project, index: number): TestPiece[] {
  const method = project.methods[index];
  if (!method) return [];
  return TEST_PIECE_KINDS.map((kind) => {
    const figures = testPieceFigures(project, index, kind);
    return { kind, figures, refusal: refusalSentence(kind, figures, project.piece, method, project.display) };
  });
}

export function useTestedMethod(): TestedMethod | null {
  const project = useDocument((state) => state.project);
  const shown = useShownProject();
  const index = useTestedIndex();
  // A refused test piece is shown as refused; anything else wrong leaves nothing to reckon with.
  const own = `methods[${index}].test.`;
  const isSound = useProblems().every(({ path }) => path === `${own}kind` || path === `${own}armMm`);
  const looked = isSound ? project : shown;
  return useMemo(() => testedMethod(looked, index, isSound), [looked, index, isSound]);
}

function testedMethod(project: Project, index: number, isFresh: boolean): TestedMethod | null {
  const method = project.methods[index];
  if (!method) return null;
  const kind = method.test.kind === 'none' ? 'fullRing' : method.test.kind;
  return { project, index, method, kind, pieces: testPiecesOf(project, index), isFresh };
}

export interface Worth extends WorthOutcome {
  /** The answer in words, for the rounds that are set. */
  words: TestAnswer | null;
}

/** What testing is worth to one method, worked out in the background. */
export function useWorth(index: number): Worth {
  const project = useShownProject();
  const outcome = useQuestion({ kind: 'testValue' }, index);
  const { answer } = outcome;
  const words = useMemo(() => answer && testAnswer(answer, project, index), [answer, project, index]);
  return { ...outcome, words };
}
