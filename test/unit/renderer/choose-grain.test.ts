/** Ripped staves and methods that turn the strip end for end. */
import { beforeEach, expect, test } from 'vitest';
import { chooseGrain } from '../../../renderer/pages/piece/choose-grain';
import { take, useChoice } from '../../../renderer/state/choice-store';
import { replaceProject, undo, useDocument } from '../../../renderer/state/document-store';
import { problemsOf } from '../../../renderer/state/problems';
import { exampleProject } from '../../../sim/project/example';

const said: string[] = [];
const say = (sentence: string): void => void said.push(sentence);
const project = () => useDocument.getState().project;

/** The example, whose “Marked line” alone turns the strip end for end. */
const example = exampleProject();

beforeEach(() => {
  replaceProject(example);
  useChoice.setState({ choice: null });
  said.length = 0;
});

test('the methods that turn the strip end for end are changed with the grain, in one step, and it is said', () => {
  const turning = example.methods.filter(({ sequence }) => sequence === 'swapSides').map(({ name }) => name);
  chooseGrain('upStave', say);
  expect(project()).toBe(example);
  const [both] = useChoice.getState().choice?.answers ?? [];
  take(both!);
  expect(problemsOf(project())).toEqual([]);
  expect(said).toHaveLength(1);
  expect(turning.length).toBeGreaterThan(0);
  for (const name of turning) expect(said[0]).toContain(`“${name}”`);
  undo();
  expect(project()).toBe(example);
});

test('the grain alone leaves the methods as they are', () => {
  chooseGrain('upStave', say);
  take(useChoice.getState().choice!.answers[1]!);
  expect(project().piece.grain).toBe('upStave');
  expect(project().methods).toEqual(example.methods);
});

test('nothing is asked where no method turns the strip end for end', () => {
  chooseGrain('upStave', say);
  take(useChoice.getState().choice!.answers[0]!);
  chooseGrain('alongRing', say);
  chooseGrain('upStave', say);
  expect(useChoice.getState().choice).toBeNull();
  expect(project().piece.grain).toBe('upStave');
});
