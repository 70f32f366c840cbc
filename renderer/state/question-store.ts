/** Questions about one method that take a while: which are on the screen, and what is known. Never part of the project. */
import { create } from 'zustand';
import { asTried } from '../../sim/decide/test-value';
import type { Project } from '../../sim/project/document';
import type { QuestionProgress } from '../../sim/questions/ask-pool';
import type { Answers, Question, QuestionKind } from '../../sim/questions/questions';
import { withFigure, withMethod } from './edits';
import { outcomeKey } from './run-store';

export interface WantedQuestion {
  project: Project;
  /** Index of the method asked about. */
  method: number;
  question: Question;
  /** How many panels wait for it. */
  panels: number;
}

export type Answer = Answers[QuestionKind];

/** Everything but `lastAnswers` by `questionKey`. */
export interface QuestionState {
  questionsWanted: ReadonlyMap<string, WantedQuestion>;
  /** Those being worked on, with how far they have come; null before the first word. */
  questionsRunning: ReadonlyMap<string, QuestionProgress | null>;
  /** Those that the person stopped. */
  questionsStopped: ReadonlySet<string>;
  questionFailures: ReadonlyMap<string, string>;
  answers: ReadonlyMap<string, Answer>;
  /** The latest answer to each kind of question about a method's name, shown softened until the one that fits is there. */
  lastAnswers: ReadonlyMap<string, Answer>;
}

export const useQuestions = create<QuestionState>()(() => ({
  questionsWanted: new Map(),
  questionsRunning: new Map(),
  questionsStopped: new Set(),
  questionFailures: new Map(),
  answers: new Map(),
  lastAnswers: new Map(),
}));

const ANSWERS_KEPT = 60;

/** These count good pieces, so that the show limit matters to them. */
const DEPENDS_ON_LIMIT: readonly QuestionKind[] = ['aim', 'accuracy', 'testValue', 'hinges'];

/** Everything that the answer follows from. */
export function questionKey(project: Project, method: number, question: Question): string {
  const limit = DEPENDS_ON_LIMIT.includes(question.kind) ? project.limits.showGapMm : '';
  const rival = question.kind === 'hinges' ? outcomeKey(project, question.rival) : '';
  return `${JSON.stringify(question)} ${limit} ${outcomeKey(asAsked(project, method, question), method)} ${rival}`;
}

/** The project without what makes no difference to the answer. */
function asAsked(project: Project, method: number, { kind }: Question): Project {
  // Which aim is best does not depend on the one that is set.
  if (kind === 'aim') return withFigure(method, 'tilt', 'aimDeg', 0)(project);
  return kind === 'testValue' ? withMethod(method, asTried)(project) : project;
}

/** The place on the screen that an answer belongs to. */
export function answerPlace(project: Project, method: number, { kind }: Question): string {
  return `${kind} ${project.methods[method]?.name ?? ''}`;
}

function put<Value>(map: ReadonlyMap<string, Value>, key: string, value: Value): Map<string, Value> {
  const next = new Map(map);
  next.delete(key);
  return next.set(key, value);
}

function without<Value>(map: ReadonlyMap<string, Value>, key: string): ReadonlyMap<string, Value> {
  if (!map.has(key)) return map;
  const next = new Map(map);
  next.delete(key);
  return next;
}

function newest<Value>(map: Map<string, Value>): Map<string, Value> {
  for (const key of map.keys()) {
    if (map.size <= ANSWERS_KEPT) break;
    map.delete(key);
  }
  return map;
}

/** A panel that shows the answer is on the screen; `unwantQuestion` when it no longer is. */
export function wantQuestion(key: string, wanted: Omit<WantedQuestion, 'panels'>): void {
  useQuestions.setState(({ questionsWanted }) => {
    const panels = (questionsWanted.get(key)?.panels ?? 0) + 1;
    return { questionsWanted: new Map(questionsWanted).set(key, { ...wanted, panels }) };
  });
}

export function unwantQuestion(key: string): void {
  useQuestions.setState(({ questionsWanted }) => {
    const entry = questionsWanted.get(key);
    if (!entry) return {};
    if (entry.panels === 1) return { questionsWanted: without(questionsWanted, key) };
    return { questionsWanted: new Map(questionsWanted).set(key, { ...entry, panels: entry.panels - 1 }) };
  });
}

export function stopQuestion(key: string): void {
  useQuestions.setState(({ questionsStopped }) => ({ questionsStopped: new Set(questionsStopped).add(key) }));
}

/** Takes a question up again that was stopped or failed. */
export function askAgain(key: string): void {
  useQuestions.setState(({ questionsStopped, questionFailures }) => ({
    questionsStopped: new Set([...questionsStopped].filter((stopped) => stopped !== key)),
    questionFailures: without(questionFailures, key),
  }));
}

export function noteProgress(key: string, progress: QuestionProgress | null): void {
  useQuestions.setState(({ questionsRunning }) => ({ questionsRunning: put(questionsRunning, key, progress) }));
}

export function keepAnswer(key: string, { project, method, question }: WantedQuestion, answer: Answer): void {
  useQuestions.setState(({ answers, lastAnswers, questionsRunning }) => ({
    answers: newest(put(answers, key, answer)),
    lastAnswers: newest(put(lastAnswers, answerPlace(project, method, question), answer)),
    questionsRunning: without(questionsRunning, key),
  }));
}

export function keepQuestionFailure(key: string, sentence: string): void {
  useQuestions.setState(({ questionFailures, questionsRunning }) => ({
    questionFailures: newest(put(questionFailures, key, sentence)),
    questionsRunning: without(questionsRunning, key),
  }));
}

export function noteDropped(key: string): void {
  useQuestions.setState(({ questionsRunning }) => ({ questionsRunning: without(questionsRunning, key) }));
}
