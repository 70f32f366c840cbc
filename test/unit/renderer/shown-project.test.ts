/** What is shown while a value cannot be used. */
import { beforeEach, expect, test } from 'vitest';
import { whyNoPrediction, whyNoRings } from '../../../renderer/exports/project-exports';
import {
  beginGesture,
  edit,
  endGesture,
  replaceProject,
  undo,
  useDocument,
} from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { mendingOf, whyNoOutput } from '../../../renderer/state/problems';
import { shownProjectNow } from '../../../renderer/state/shown-project';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';

const setSlope = (slopeDeg: number): void => edit(withSection('piece', { slopeDeg }));
const shownSlope = (): number => shownProjectNow().piece.slopeDeg;

/** As a field does it: key by key, in one gesture. */
function typeSlope(...values: number[]): void {
  beginGesture();
  for (const value of values) setSlope(value);
}

/** The example without what must fit inside, which leaves no room for a slope. */
function roomyProject(): Project {
  const { piece, ...rest } = exampleProject();
  const { insert: _, ...roomy } = piece;
  return { ...rest, piece: roomy };
}

beforeEach(() => replaceProject(roomyProject()));

test('a number typed to its end that cannot be used leaves what was there before its first key', () => {
  setSlope(4);
  typeSlope(9);
  expect(shownSlope()).toBe(9);
  // Members as wide as the height, 140 mm, leave no opening in a flat frame 280 mm across: 280 − 2·140 = 0.
  setSlope(90);
  expect(shownSlope()).toBe(4);
  endGesture();
  expect(shownSlope()).toBe(4);
  undo();
  expect(shownSlope()).toBe(4);
});

test('what was typed to its end and can be used is the last good one from then on', () => {
  typeSlope(1, 12);
  endGesture();
  setSlope(-5);
  expect(shownSlope()).toBe(12);
});

test('a limit that cannot be used changes no figure', () => {
  const { limits } = exampleProject();
  edit(withSection('limits', { showGapMm: -1 }));
  expect(shownProjectNow().limits).toEqual(limits);
});

test('the unit of the fields is followed all the same', () => {
  setSlope(-5);
  edit((project) => ({ ...project, display: 'inch' }));
  expect(shownProjectNow()).toMatchObject({ display: 'inch', piece: { slopeDeg: exampleProject().piece.slopeDeg } });
  expect(shownProjectNow()).toBe(shownProjectNow());
});

test('nothing is printed or exported until the value is mended', () => {
  expect(whyNoOutput()).toBeNull();
  setSlope(-5);
  expect(whyNoOutput()).toBe('A value cannot be used. Mend it first.');
  expect(whyNoPrediction()).toBe(whyNoOutput());
  expect(whyNoRings()).toBe(whyNoOutput());
  undo();
  expect(useDocument.getState().project).toEqual(roomyProject());
  expect(whyNoOutput()).toBeNull();
});

test('a problem is mended on the page that is shown, if the field is there', () => {
  const where = (path: string, shown: 'verdict' | 'explain') => mendingOf({ path, sentence: '' }, shown);
  expect(where('limits.showGapMm', 'verdict')).toEqual({ page: 'verdict', isHere: true });
  expect(where('limits.showGapMm', 'explain')).toEqual({ page: 'piece', isHere: false });
  expect(where('methods[1].blade.kerfMm', 'verdict')).toEqual({ page: 'methods', isHere: false });
  expect(where('stock.trimMm', 'verdict')).toEqual({ page: 'piece', isHere: false });
});
