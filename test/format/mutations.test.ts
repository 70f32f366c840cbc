/** Thousands of damaged copies of a file: the reader gives a project or sentences, and never throws. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readProject } from '../../sim/project/read';
import { Generator } from '../../sim/random/xoshiro';

const SAMPLE = new URL('./samples/version-1.ringtrue.json', import.meta.url);
const TEXT = JSON.stringify(JSON.parse(readFileSync(SAMPLE, 'utf8')));
const PIECES = ['"', '{', '}', '[', ']', ',', ':', '-', '1e999', 'null', 'NaN', '\\', '\u0000', '__proto__', '0', '9'];

describe('ten thousand damaged files', () => {
  it('are each either read or refused in sentences', () => {
    const generator = new Generator([2, 7, 1, 8]);
    const below = (count: number): number => generator.nextUint32() % count;
    let refused = 0;
    for (let round = 0; round < 10_000; round++) {
      let text = TEXT;
      for (let hit = 0; hit <= below(3); hit++) {
        const at = below(text.length);
        const gone = below(4) === 0 ? below(40) : below(3);
        text = text.slice(0, at) + (PIECES[below(PIECES.length + 4)] ?? '') + text.slice(at + gone);
      }
      const outcome = readProject(text);
      if (outcome.ok) continue;
      refused++;
      expect(outcome.problems.length).toBeGreaterThan(0);
      for (const { sentence } of outcome.problems) {
        expect(sentence).toMatch(/^[^\p{Cc}]{10,}\.$/u);
      }
    }
    expect(refused).toBeGreaterThan(5000);
    expect(refused).toBeLessThan(10_000);
  }, 60_000);
});
