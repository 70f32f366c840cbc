/** What a person may hand over by mistake: each gets sentences that say what, where, what was seen and what to do. */
import { describe, expect, it } from 'vitest';
import { problemLine } from '../../sim/project/problem';
import { readProject } from '../../sim/reading/read';
import { bareFile, fileWith } from './bare-file';

function lines(text: string): string[] {
  const outcome = readProject(text);
  return outcome.ok ? [] : outcome.problems.map(problemLine);
}
const linesWith = (changes: Record<string, unknown>): string[] => lines(JSON.stringify(fileWith(changes)));
const bareText = JSON.stringify(bareFile(), null, 2);

describe('text that is not JSON', () => {
  it.each([
    ['', 'The file is empty.'],
    ['  \r\n ', 'The file is empty.'],
    ['\uFEFF', 'The file is empty.'],
    ['hello', 'line 1, column 1 has hello where a value belongs'],
    ['{"a": NaN}', 'line 1, column 7 has NaN where a value belongs'],
    ['{\r\n "a": 1,\r\n "b": [1 2]\r\n}', 'line 3, column 10 has 2 where a comma or "]" belongs'],
    ['{"a": 1,}', 'line 1, column 9 has } where a key in double quotes belongs'],
    ["{'a': 1}", "line 1, column 2 has 'a' where a key in double quotes belongs"],
    ['{"a" 1}', 'line 1, column 6 has 1 where a colon belongs'],
    ['{"a": 01}', 'line 1, column 7 has 01 where a value belongs'],
    ['{"a": .5}', 'line 1, column 7 has .5 where a value belongs'],
    ['{"a": "b', 'line 1, column 7 has "b where a value belongs'],
    ['{"a": "b\u0007"}', 'line 1, column 7'],
    ['{"a": "\\x"}', 'line 1, column 7'],
    ['{"a": 1} {}', 'line 1, column 10 has { where the end of the file belongs'],
    ['{"a": [1, 2', 'it ends at line 1, column 12 where a comma or "]" belongs'],
    ['// a note\n{}', 'line 1, column 1 has // where a value belongs'],
    ['{"a": Infinity}', 'line 1, column 7 has Infinity where a value belongs'],
  ])('%j', (text, said) => {
    const [first, ...others] = lines(text);
    expect(first).toContain(said);
    expect(others).toEqual([]);
  });

  it('shows no control characters of the file', () => {
    const [line] = lines('{"a": \u001b[31mred}');
    expect(line).toContain('\\u001b');
    expect(line).not.toContain('\u001b');
  });

  it('finds a fault behind a long unclosed text without giving up', () => {
    expect(lines(`{"a": "${'x'.repeat(200_000)}`)[0]).toContain('line 1, column 7');
  });
});

describe('JSON that is no project', () => {
  it.each([
    ['null', 'The file holds null, not a project.'],
    ['3', 'The file holds 3, not a project.'],
    ['[]', 'The file holds a list, not a project.'],
    ['{}', 'format: This is not a Ringtrue project. Format is missing. Give "ringtrue".'],
    ['{"format": "other"}', 'Format is "other". Give "ringtrue".'],
    ['{"format": "ringtrue"}', 'version: Version is missing. Give 1.'],
  ])('%s', (text, said) => {
    expect(lines(text)).toEqual([expect.stringContaining(said)]);
  });

  it('refuses a key called __proto__ wherever it stands', () => {
    expect(lines('{"__proto__": {"format": "ringtrue"}}')).toEqual([expect.stringMatching(/^__proto__: /)]);
    const inside = bareText.replace('"sides"', '"__proto__": {"x": 1}, "sides"');
    expect(lines(inside)).toEqual([expect.stringMatching(/^piece\.__proto__: /)]);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  it('refuses half of a character, in a value or a key, and takes a whole one', () => {
    const title = (text: string) => bareText.replace(/"title": "[^"]*"/, `"title": "${text}"`);
    expect(lines(title('a\\ud800b'))).toEqual([
      'title: The text holds half of a character (a lone surrogate). Type it anew.',
    ]);
    expect(lines(title('a\\udc00'))).toHaveLength(1);
    expect(lines(bareText.replace('"sides"', '"si\\ud83ddes": 1, "sides"'))).toEqual([
      expect.stringMatching(/^piece: A key holds half of a character/),
    ]);
    expect(lines(title('a \\ud83e\\udeb5 b'))).toEqual([]);
  });

  it('refuses very deep nesting without running out of stack', { timeout: 60_000 }, () => {
    const deep = 300_000;
    expect(lines('['.repeat(deep) + ']'.repeat(deep))).toEqual([expect.stringContaining('32 levels deep')]);
    expect(lines('['.repeat(deep))).toEqual([expect.stringContaining('it ends at line 1')]);
  });

  it('refuses more text than a project could ever have', () => {
    expect(lines(' '.repeat(20 * 1024 * 1024 + 1))).toEqual([expect.stringContaining('20971520')]);
  });
});

describe('versions', () => {
  it.each([
    [2, 'version: The file is of version 2; this Ringtrue reads up to version 1. Open it with a newer Ringtrue'],
    [0, 'version: Version 0 is not a version of the project file. Give 1.'],
    ['1', 'version: Version is "1", not a whole number. Give 1.'],
    [1.5, 'version: Version is 1.5, not a whole number. Give 1.'],
  ])('%j', (version, said) => {
    expect(linesWith({ version })).toEqual([expect.stringContaining(said)]);
  });

  it('tells a newer version before anything else that is new in it', () => {
    expect(linesWith({ version: 7, workshop: {}, piece: undefined })).toHaveLength(1);
  });
});

describe('values', () => {
  it.each<[string, Record<string, unknown>, string]>([
    [
      'zero thickness',
      { 'piece.thicknessMm': 0 },
      'piece.thicknessMm: Thickness 0 mm is not above 0. Give the finished thickness of the staves, above 0 and up to 200 mm.',
    ],
    [
      'two sides',
      { 'piece.sides': 2 },
      'piece.sides: Number of sides 2 is below 3. Give the number of staves, a whole number from 3 to 60.',
    ],
    [
      'half a side',
      { 'piece.sides': 7.5 },
      'piece.sides: Number of sides 7.5 is not a whole number. Give the number of staves, a whole number from 3 to 60.',
    ],
    [
      'a number out of all range',
      { 'piece.heightMm': 1e308 },
      'piece.heightMm: Height 1e+308 mm is above 3000. Give the height along the face, above 0 and up to 3000 mm.',
    ],
    ['a number written as text', { 'piece.thicknessMm': '15' }, 'piece.thicknessMm: Thickness is "15", not a number.'],
    [
      'a word that is not a choice',
      { 'run.rule': 'exact' },
      'run.rule: The closing rule is "exact". Give one of contact, touch.',
    ],
    [
      'an unknown key',
      { 'piece.color': 'red' },
      'piece.color: "color" is not a key of the piece. Take it out, or use one of sides,',
    ],
    [
      'an insert larger than the ring',
      { 'piece.insert': { diameterMm: 369, clearanceMm: 3 } },
      'piece.insert.diameterMm: Insert diameter 369 mm with 3 mm clearance needs 372 mm, ' +
        'but the clear opening at the narrow end is 370 mm.',
    ],
    [
      'thickness that fills the ring',
      { 'piece.size.mm': 30 },
      'piece.size.mm: Size 30 mm across the outside flats leaves no opening: with slope 0°, height 100 mm and ' +
        'thickness 15 mm the clear opening at the narrow end is 0 mm, not above 0.',
    ],
    [
      'slope that closes the narrow end',
      { 'piece.slopeDeg': 45, 'piece.heightMm': 300 },
      'the clear opening at the narrow end is -45.48 mm, not above 0.',
    ],
    [
      'staves that come to a point',
      { 'piece.slopeDeg': 90, 'piece.heightMm': 450 },
      'leaves no staves: with slope 90° and height 450 mm they are -13.4 mm wide at mid-height, not above 0.',
    ],
    [
      // 12 staves of 400·tan 15° = 107.18 − 15·tan 15° + 2.8/cos 15° = 106.059 mm, 15 mm of trim, 200 mm to hold: 1487.71 mm.
      'strips too short',
      { 'stock.stripLengthMm': 1000 },
      'stock.stripLengthMm: Strip length 1000 mm is too short: “Only” needs 1487.72 mm, ' +
        'for trim 15 mm, 12 staves of 106.06 mm and 200 mm to hold.',
    ],
    [
      'more strips than staves',
      { 'stock.stripCount': 13 },
      'stock.stripCount: Number of strips 13 is above the 12 staves. Give a whole number from 1 to 12.',
    ],
    [
      'two halves of an odd ring',
      { 'piece.sides': 11, 'methods[0].assembly.by': 'twoHalves' },
      'methods[0].assembly.by: “Only” is put together in two halves, which needs an even number of sides, but there are 11.',
    ],
    [
      'half a test ring of an odd ring',
      { 'piece.sides': 11, 'methods[0].test.kind': 'halfRing' },
      'methods[0].test.kind: “Only” is tested with half a ring, which needs an even number of sides, but there are 11.',
    ],
    [
      'two test halves of an odd ring',
      { 'piece.sides': 11, 'methods[0].test.kind': 'twoHalvesTogether' },
      'methods[0].test.kind: “Only” is tested with two halves together, which needs an even number of sides, but there are 11.',
    ],
    [
      'sides swapped with ripped staves',
      { 'piece.grain': 'upStave', 'methods[0].sequence': 'swapSides' },
      'methods[0].sequence: “Strip turned end for end” needs the grain around the ring, but it runs up the stave',
    ],
    [
      'a plate as thick as the kerf',
      { 'methods[0].blade.plateMm': 2.8 },
      'methods[0].blade.plateMm: Blade plate 2.8 mm is not below the kerf, 2.8 mm.',
    ],
    [
      'a collar that is too large',
      { 'methods[0].blade.collarMm': 130 },
      'methods[0].blade.collarMm: Blade collar 130 mm is not between 0.1 and 0.5 of the blade diameter, 250 mm. ' +
        'Give the diameter of the collar, from 25 to 125 mm.',
    ],
    [
      'more free joints than joints',
      { 'methods[0].assembly.freeJoints': 13 },
      'methods[0].assembly.freeJoints: Free joints 13 is above the 12 joints of the ring. Give a whole number from 2 to 12.',
    ],
    [
      'a method without a name',
      { methods: [{}] },
      'methods[0].name: Name of the method is missing. Give each method a name.',
    ],
    ['a method with a blank name', { methods: [{ name: ' ' }] }, 'methods[0].name: Name of the method is empty.'],
    [
      'two methods of one name',
      { methods: [{ name: 'Stop' }, { name: 'Line' }, { name: 'Stop' }] },
      'methods[2].name: Another method is called “Stop” already.',
    ],
    ['methods that are no list', { methods: { name: 'Stop' } }, 'methods: Methods is a group of keys, not a list.'],
    [
      'a piece that is no group',
      { piece: 12 },
      'piece: The piece is 12, not a group of keys. Give a group with the keys sides,',
    ],
    [
      'a missing size',
      { 'piece.size': undefined },
      'piece.size: The size is missing. Give a group with the keys by, mm.',
    ],
    ['a title that is no text', { title: 12 }, 'title: Title is 12, not text. Give the piece a title.'],
  ])('%s', (_, changes, said) => {
    expect(linesWith(changes)).toEqual([expect.stringContaining(said)]);
  });

  it('reads 1e999 as a number out of range', () => {
    expect(lines(bareText.replace('"thicknessMm": 15', '"thicknessMm": 1e999'))).toEqual([
      expect.stringContaining('Thickness Infinity mm is above 200.'),
    ]);
  });

  it('names every wrong value, not the first alone', () => {
    const wrong = linesWith({ 'piece.sides': 2, 'piece.thicknessMm': 0, 'run.trials': 5, 'run.speed': 3 });
    expect(wrong.map((line) => line.split(':')[0])).toEqual([
      'piece.sides',
      'piece.thicknessMm',
      'run.trials',
      'run.speed',
    ]);
  });

  it('stops naming at fifty', () => {
    const methods = Array.from({ length: 200 }, (_, index) => ({ name: `m${index}`, blade: { plateMm: 0 } }));
    expect(linesWith({ methods })).toHaveLength(50);
  });

  it('says it in one line each, with the value seen and without control characters', () => {
    const name = 'Stop\n\u001b[2J\u202e';
    for (const changes of [{ methods: [{ name }, { name }] }, { [name]: 1 }, { 'run.rule': name }]) {
      const said = linesWith(changes).join('');
      expect(said).not.toMatch(/\p{Cc}|\u202e/u);
      expect(said).toContain('Stop\\u000a\\u001b');
    }
  });
});
