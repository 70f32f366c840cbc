// @vitest-environment happy-dom
import { act, cleanup, renderHook } from '@testing-library/react';
import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { answerQuestions } from '../../../renderer/state/answer-questions';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withFigure, withMethod, withSection } from '../../../renderer/state/edits';
import { questionKey, useQuestions } from '../../../renderer/state/question-store';
import { useRun } from '../../../renderer/state/run-store';
import { useQuestion } from '../../../renderer/state/use-question';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { taskPool } from '../../../sim/questions/task-pool';
import { singleRing } from '../../../sim/run/single-ring';
import { touchExcess } from '../../../sim/run/touch-excess';
import { answerTo } from '../../support/answer-to';
import { inProcessWorker } from '../../support/in-process-worker';

const PATIENCE = { timeout: 30_000, interval: 10 };

/** With half the staves, closed by touch, so that a step of a long question is soon done. */
function quickProject(): Project {
  const project = exampleProject();
  return { ...project, piece: { ...project.piece, sides: 6 }, run: { ...project.run, rule: 'touch' } };
}

const LONG_QUESTION = { kind: 'accuracy', wanted: 0.9 } as const;

beforeAll(() => {
  const pool = () => taskPool(1, inProcessWorker);
  answerQuestions({ long: pool(), quick: pool() });
});

beforeEach(() => {
  useQuestions.setState(useQuestions.getInitialState());
  useRun.setState(useRun.getInitialState());
  replaceProject(quickProject());
});

afterEach(cleanup);

const askRing = (ring: number) =>
  renderHook((n: number) => useQuestion({ kind: 'ring', ring: n }, 1), { initialProps: ring });

test('a ring asked for is the ring of the run with that number', async () => {
  const { result } = askRing(7);
  expect(result.current.answer).toBeNull();
  await vi.waitFor(() => expect(result.current.standing).toBe('answered'), PATIENCE);
  expect(result.current.answer).toEqual(singleRing(quickProject(), 1, 7));
});

test('until the new answer is there the former one stays and counts as not fresh', async () => {
  const { result, rerender } = askRing(7);
  await vi.waitFor(() => expect(result.current.isFresh).toBe(true), PATIENCE);
  const before = result.current.answer;
  rerender(8);
  expect(result.current).toMatchObject({ answer: before, isFresh: false });
  await vi.waitFor(() => expect(result.current.isFresh).toBe(true), PATIENCE);
  expect(result.current.answer?.ring).toBe(8);
});

test('an answer is kept for its project: undo finds it again, and neither names nor the show limit take it away', async () => {
  const { result } = askRing(3);
  await vi.waitFor(() => expect(result.current.isFresh).toBe(true), PATIENCE);
  const before = result.current.answer;
  act(() => edit(withFigure(1, 'tilt', 'sharedDeg', 0.3)));
  expect(result.current.isFresh).toBe(false);
  act(() => useDocument.temporal.getState().undo());
  expect(result.current).toMatchObject({ answer: before, isFresh: true });
  act(() => edit(withSection('limits', { showGapMm: 0.05 })));
  act(() => edit(withMethod(1, (method) => ({ ...method, name: 'Renamed' }))));
  expect(result.current).toMatchObject({ answer: before, isFresh: true });
});

test('a long question waits until the rings are done', async () => {
  useRun.setState({ work: { ringsDone: 0, ringsWanted: 10 } });
  const { result } = renderHook(() => useQuestion({ kind: 'touchExcess' }, 0));
  // Longer than the hand has to rest.
  await new Promise((resolve) => setTimeout(resolve, 400));
  expect(result.current.standing).toBe('waiting');
  act(() => useRun.setState({ work: null }));
  await vi.waitFor(() => expect(result.current.standing).toBe('answered'), PATIENCE);
  expect(result.current.answer).toEqual({ excess: touchExcess(quickProject(), 0) });
});

test('a question is stopped on request and taken up again on request', async () => {
  const { result } = renderHook(() => useQuestion(LONG_QUESTION, 0));
  await vi.waitFor(() => expect(result.current.standing).toBe('working'), PATIENCE);
  act(() => result.current.stop());
  expect(result.current.standing).toBe('stopped');
  act(() => result.current.goOn());
  await vi.waitFor(() => expect(result.current.standing).toBe('working'), PATIENCE);
});

test('a question that no panel shows any more is dropped, and the next takes its place', async () => {
  const first = renderHook(() => useQuestion(LONG_QUESTION, 0));
  await vi.waitFor(() => expect(first.result.current.standing).toBe('working'), PATIENCE);
  first.unmount();
  expect(useQuestions.getState().questionsRunning.size).toBe(0);
  const next = renderHook(() => useQuestion({ kind: 'touchExcess' }, 0));
  await vi.waitFor(() => expect(next.result.current.standing).toBe('answered'), PATIENCE);
  expect(useQuestions.getState().answers.size).toBe(1);
});

test('which aim is best is asked once, whatever aim is set meanwhile, but anew for another limit', () => {
  const project = quickProject();
  const key = (changed: Project) => questionKey(changed, 0, { kind: 'aim' });
  expect(key(withFigure(0, 'tilt', 'aimDeg', 0.2)(project))).toBe(key(project));
  expect(key(withSection('limits', { showGapMm: 0.05 })(project))).not.toBe(key(project));
});

test('what answers the question of a page is worked out first', async () => {
  const aim = renderHook(() => useQuestion({ kind: 'aim' }, 0));
  const budget = renderHook(() => useQuestion({ kind: 'budget', rings: 500 }, 0));
  await vi.waitFor(() => expect(budget.result.current.standing).toBe('answered'), PATIENCE);
  expect(aim.result.current.standing).toBe('working');
  const { budget: found, indices } = budget.result.current.answer ?? { budget: null, indices: [] };
  expect(found).toEqual((await answerTo(quickProject(), 0, { kind: 'budget', rings: 500 })).budget);
  expect(indices.map(({ source }) => source)).toEqual(found?.sources.map(({ source }) => source));
});

test('while a value cannot be used nothing waits: the project as it last could be computed is asked about', async () => {
  act(() => edit(withSection('piece', { thicknessMm: 0 })));
  const { result } = askRing(0);
  await vi.waitFor(() => expect(result.current.standing).toBe('answered'), PATIENCE);
});

test('a question the engine refuses fails with its sentence', async () => {
  const { result } = askRing(99_999_999);
  await vi.waitFor(() => expect(result.current.standing).toBe('failed'), PATIENCE);
  expect(result.current.failure).toMatch(/not one of the .* rings/);
});
