import { expect, test } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { applyPreset } from '../../../sim/project/presets';
import { methodDifferenceSentence, methodDifferences, methodFigureText } from '../../../sim/wording/method-differences';

const [markedLine, fixedStop, tested] = exampleProject().methods;
if (!markedLine || !fixedStop || !tested) throw new Error('The example has fewer than three methods.');

test('methods that differ in one choice are said to differ in it alone', () => {
  // In the example the third is the second with a dry ring tested.
  expect(methodDifferences(tested, fixedStop).map(({ part }) => part)).toEqual(['test']);
  expect(methodDifferenceSentence(tested, fixedStop)).toMatch(
    /^“Fixed stop, tested ring” differs from “Fixed stop” in the test cuts \(“.+”, not “.+”\)\.$/,
  );
});

test('parts are named in the order of the work, with both choices', () => {
  const parts = methodDifferences(fixedStop, markedLine).map(({ part }) => part);
  expect(parts).toEqual(['tilt', 'guide', 'width', 'blade', 'sequence', 'wideFace', 'test', 'minutes']);
  expect(methodDifferenceSentence(fixedStop, markedLine)).toContain(
    'how the tilt is set (“Scale on the saw”, not “Drafted angle”)',
  );
});

test('a difference is the same whichever of the two is held against the other, its choices changed over', () => {
  const there = methodDifferences(fixedStop, markedLine);
  const back = methodDifferences(markedLine, fixedStop);
  expect(back.map(({ part, keys }) => [part, new Set(keys)])).toEqual(
    there.map(({ part, keys }) => [part, new Set(keys)]),
  );
  expect(back[0]?.chosen).toEqual({ own: there[0]?.chosen?.other, other: there[0]?.chosen?.own });
});

test('one figure changed behind a choice is one figure, and the choice is said to have figures of its own', () => {
  const changed = { ...fixedStop, name: 'Changed', blade: { ...fixedStop.blade, kerfMm: 2.9 } };
  expect(methodDifferences(changed, fixedStop)).toEqual([
    {
      part: 'blade',
      keys: ['kerfMm'],
      chosen: expect.objectContaining({ own: expect.stringContaining('own figures') }),
    },
  ]);
  const again = { ...changed, name: 'Again', blade: { ...changed.blade, kerfMm: 2.8 } };
  expect(methodDifferenceSentence(again, changed)).toBe('“Again” differs from “Changed” in the blade (1 figure).');
  // Back to the choice, and nothing is left of it.
  const id = 'fullKerf';
  expect(methodDifferences(applyPreset(changed, 'blade', id), fixedStop)).toEqual([]);
});

test('a copy does everything as the original does, and a figure left out is not one left as it is', () => {
  expect(methodDifferenceSentence({ ...fixedStop, name: 'Copy' }, fixedStop)).toBe(
    '“Copy” does everything as “Fixed stop” does.',
  );
  const { armMm: _, ...test } = markedLine.test;
  expect(methodDifferences({ ...markedLine, test }, markedLine)).toMatchObject([{ part: 'test', keys: ['armMm'] }]);
});

test('figures stand with their unit, in the units shown', () => {
  expect(methodFigureText('tilt.sharedDeg', 0.5, 'metric')).toBe('0.5°');
  expect(methodFigureText('blade.kerfMm', 3.2, 'metric')).toBe('3.2 mm');
  // An inch is 25.4 mm by definition (international yard and pound agreement, 1959).
  expect(methodFigureText('blade.kerfMm', 3.175, 'inch')).toBe('0.125 in');
  expect(methodFigureText('width.chipChance', 0.02, 'metric')).toBe('0.02');
  expect(methodFigureText('blade.forceMeanN', 12, 'inch')).toBe('12 N');
});
