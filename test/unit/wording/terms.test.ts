import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fieldHelp, NUMBER_FIELDS } from '../../../sim/project/fields';
import { TERM_OF_HEAD, TERMS, termOfHead } from '../../../sim/wording/terms';

const ROOT = join(import.meta.dirname, '../../..');

/** Every source in which a page's heads may stand. */
function sources(): string {
  return ['renderer', 'sim/wording'].map(textUnder).join('\n');
}

function textUnder(folder: string): string {
  const files = readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' });
  return files
    .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('terms.ts'))
    .map((file) => readFileSync(join(ROOT, folder, file), 'utf8'))
    .join('\n');
}

const SENTENCES = /^[“A-Z0-9].*\.$/s;

test('every word is explained in whole sentences, short enough to be read where it stands', () => {
  for (const { name, meaning } of Object.values(TERMS)) {
    expect(meaning, name).toMatch(SENTENCES);
    expect(meaning.length, name).toBeLessThan(260);
    expect(name).not.toMatch(/[.?]$/);
  }
});

test('a head that is explained is a head that is shown', () => {
  const text = sources();
  for (const head of Object.keys(TERM_OF_HEAD)) expect(text.includes(head), `“${head}” stands on no page`).toBe(true);
});

test('a head is found with a method’s name at its end, and one that needs no word gets none', () => {
  expect(termOfHead('Better or worse than “Fixed stop”')).toBe(TERMS.heldAgainst);
  expect(termOfHead('The mouth at dry fit')).toBe(TERMS.mouth);
  expect(termOfHead('Method')).toBeNull();
  expect(termOfHead('toString')).toBeNull();
});

test('every figure of a method says what it stands for', () => {
  const keys = Object.keys(NUMBER_FIELDS).filter((key) => key.startsWith('methods[]'));
  expect(keys.length).toBeGreaterThanOrEqual(40);
  for (const key of keys) {
    const help = fieldHelp(key.replace('[]', '[3]'));
    expect(help, key).toMatch(SENTENCES);
    expect(help?.length, key).toBeLessThan(220);
  }
  expect(fieldHelp('piece.thicknessMm')).toBeUndefined();
});
