/** Thousands of damaged copies of a file: the reader gives the project that stands there or sentences, and never throws. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';
import { Generator } from '../../sim/random/xoshiro';
import { readProject } from '../../sim/reading/read';
import type { Json } from './bare-file';
import { BARE_PROJECT } from './bare-project';

const SAMPLE = new URL('./samples/version-1.ringtrue.json', import.meta.url);
const TEXT = JSON.stringify(JSON.parse(readFileSync(SAMPLE, 'utf8')));
const PIECES = ['"', '{', '}', '[', ']', ',', ':', '-', '1e999', 'null', 'NaN', '\\', '\u0000', '__proto__', '0', '9'];

const isGroup = (value: unknown): value is Json => typeof value === 'object' && value !== null;

/**
 * Where a project differs from what its file says.
 *
 * @param given what stands in the file
 * @param read what was made of it
 * @param defaults what holds where the file says nothing; nothing is added elsewhere
 * @returns the paths of the keys
 */
function unfaithful(given: unknown, read: unknown, defaults: unknown, path = ''): string[] {
  if (!isGroup(given) || !isGroup(read)) return given === read ? [] : [path];
  if (Array.isArray(given) !== Array.isArray(read)) return [path];
  const usual = isGroup(defaults) ? defaults : {};
  return [...new Set([...Object.keys(given), ...Object.keys(read), ...Object.keys(usual)])].flatMap((key) => {
    const inner = `${path}.${key}`;
    // Every method has the defaults of the one in the bare file; the bare list itself is none.
    if (Array.isArray(given)) return unfaithful(given[Number(key)], read[key], METHOD_DEFAULTS, inner);
    if (Object.hasOwn(given, key)) return unfaithful(given[key], read[key], usual[key], inner);
    return unfaithful(usual[key], read[key], usual[key], inner);
  });
}

const METHOD_DEFAULTS = BARE_PROJECT.methods[0];
const DEFAULTS = { ...BARE_PROJECT, methods: null, piece: { ...BARE_PROJECT.piece, insert: { clearanceMm: 0 } } };

/** The same where the file has no insert, which is no default. */
function defaultsFor(file: Json): Json {
  const hasInsert = isGroup(file.piece) && 'insert' in file.piece;
  return hasInsert ? DEFAULTS : { ...DEFAULTS, piece: BARE_PROJECT.piece };
}

/** Nothing was put right on the way in, and nothing is on the way out. */
function expectFaithful(text: string, project: Project): void {
  const given: Json = JSON.parse(text);
  expect(unfaithful(given, project, defaultsFor(given)), text).toEqual([]);
  expect(unfaithful(JSON.parse(writeProject(project)), project, null), text).toEqual([]);
}

describe('ten thousand damaged files', () => {
  it('are each read as they stand there or refused in sentences', () => {
    const generator = new Generator([2, 7, 1, 8]);
    const below = (count: number): number => generator.nextUint32() % count;
    let refused = 0;
    let changed = 0;
    for (let round = 0; round < 10_000; round++) {
      let text = TEXT;
      for (let hit = 0; hit <= below(3); hit++) {
        const at = below(text.length);
        const gone = below(4) === 0 ? below(40) : below(3);
        text = text.slice(0, at) + (PIECES[below(PIECES.length + 4)] ?? '') + text.slice(at + gone);
      }
      const outcome = readProject(text);
      if (outcome.ok) {
        expectFaithful(text, outcome.project);
        if (text !== TEXT) changed++;
        continue;
      }
      refused++;
      expect(outcome.problems.length).toBeGreaterThan(0);
      for (const { sentence } of outcome.problems) {
        expect(sentence).toMatch(/^[^\p{Cc}]{10,}\.$/u);
      }
    }
    expect(refused).toBeGreaterThan(5000);
    expect(changed).toBeGreaterThan(50);
  }, 60_000);
});

describe('three thousand files with a key left out, given another value or given once more', () => {
  /** Every group of a file, itself included. */
  const groupsOf = (value: unknown): Json[] =>
    isGroup(value) ? [...(Array.isArray(value) ? [] : [value]), ...Object.values(value).flatMap(groupsOf)] : [];
  const VALUES = [
    0,
    -0,
    1,
    3,
    12,
    0.15,
    1e-9,
    0.1 + 0.2,
    2 ** 31,
    '',
    ' oak ',
    'Ö',
    'both',
    'inch',
    null,
    true,
    [],
    {},
  ];

  it('are each read as they stand there or refused', () => {
    const generator = new Generator([3, 1, 4, 1]);
    const below = (count: number): number => generator.nextUint32() % count;
    const project = exampleProject();
    const whole = JSON.stringify({
      ...project,
      run: { ...project.run, settle: { relative: 0.01 } },
      explain: { client: ' For the reading room ', show: { why: false } },
    });
    let read = 0;
    for (let round = 0; round < 3000; round++) {
      const file: Json = JSON.parse(whole);
      for (let hit = 0; hit <= below(2); hit++) {
        const groups = groupsOf(file);
        const group = groups[below(groups.length)] ?? file;
        const keys = Object.keys(group);
        const key = keys[below(keys.length)];
        if (key === undefined) continue;
        if (below(2) === 0) delete group[key];
        else group[key] = VALUES[below(VALUES.length)];
      }
      const text = JSON.stringify(file);
      const outcome = readProject(text);
      if (!outcome.ok) continue;
      read++;
      expectFaithful(text, outcome.project);
    }
    expect(read).toBeGreaterThan(700);
    expect(read).toBeLessThan(2900);
  }, 60_000);

  it('are refused by the path of the key that is given once more, wherever that is', () => {
    const keys = [...TEXT.matchAll(/"(\w+)":/g)];
    expect(keys.length).toBeGreaterThan(80);
    for (const { 0: word, 1: key, index } of keys) {
      // The same letters written otherwise are the same key.
      for (const again of [word, ` "\\u${key!.charCodeAt(0).toString(16).padStart(4, '0')}${key!.slice(1)}"\n:`]) {
        const outcome = readProject(`${TEXT.slice(0, index)}${again}7,${TEXT.slice(index)}`);
        expect(outcome.ok, word).toBe(false);
        if (outcome.ok) continue;
        expect(outcome.problems[0]?.path.split('.').at(-1)).toBe(key);
        expect(outcome.problems).toEqual([
          expect.objectContaining({ sentence: expect.stringContaining(`"${key}" stands twice in its group`) }),
        ]);
      }
    }
  });
});

describe('words that look like keys', () => {
  it.each(['{"a":1,"a":2}', 'ends in \\', '", "title": "', 'title', '\\",{['])('are words: %j', (title) => {
    const outcome = readProject(writeProject({ ...exampleProject(), title }));
    expect(outcome.ok && outcome.project.title).toBe(title);
  });
});

describe('the comparison itself', () => {
  it('sees a value put right, a key added and a default of another size', () => {
    const text = writeProject(exampleProject());
    const given: Json = JSON.parse(text);
    const differs = (change: (copy: Project) => void): string[] => {
      const copy = structuredClone(exampleProject());
      change(copy);
      return unfaithful(given, copy, defaultsFor(given));
    };
    expect(differs(() => {})).toEqual([]);
    expect(differs((copy) => Object.assign(copy.piece, { thicknessMm: 15.5 }))).toEqual(['.piece.thicknessMm']);
    expect(differs((copy) => Object.assign(copy, { note: 'added' }))).toEqual(['.note']);
    expect(differs((copy) => void copy.methods.pop())).not.toEqual([]);
    delete given.limits;
    expect(differs((copy) => Object.assign(copy.limits, { ...BARE_PROJECT.limits, hiddenGapMm: 0.5 }))).toEqual([
      '.limits.hiddenGapMm',
    ]);
  });
});
