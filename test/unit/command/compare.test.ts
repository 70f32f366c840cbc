import { describe, expect, it } from 'vitest';
import { fileWith } from '../../format/bare-file';
import { keysOf } from '../../support/keys-of';
import { captured, fileOf, lantern } from './captured';

describe('compare', () => {
  it('prints methods side by side, every pair once, and a recommendation', async () => {
    const { code, stdout } = await captured(['compare', lantern(), '--trials', '2000']);
    expect(code).toBe(0);
    expect(stdout.match(/^Of two pieces/gm)).toHaveLength(7);
    expect(stdout).toMatch(/^Use “Fixed stop, tested ring”/m);
    expect(stdout).toMatch(
      /^Against “Fixed stop, tested ring” +Good enough +Gap, 95 of 100 under +Cost of a good piece/m,
    );
    expect(stdout).toMatch(/^Fixed stop, tested ring +– +– +– +\d+ in 100/m);
    expect(stdout).toMatch(/^Fixed stop +-2\d\.?\d* in 100 \(.*\) +\+0\.\d+ mm \(\+0\.\d+ to \+0\.\d+\) +-\d/m);
  });

  it('gives the same as one object', async () => {
    const { stdout } = await captured(['compare', lantern(), '--trials', '2000', '--json']);
    const comparison = JSON.parse(stdout);
    expect(comparison.format).toBe('ringtrue-comparison');
    expect(comparison.methods).toHaveLength(4);
    expect(comparison.pairs).toHaveLength(6);
    for (const { firstAhead } of comparison.pairs) {
      expect(firstAhead.low).toBeLessThanOrEqual(firstAhead.value);
      expect(firstAhead.high).toBeGreaterThanOrEqual(firstAhead.value);
    }
    const chances = comparison.bestChances.map((entry: { bestChance: { value: number } }) => entry.bestChance.value);
    expect(chances).toHaveLength(4);
    expect(chances.reduce((sum: number, chance: number) => sum + chance, 0)).toBeCloseTo(1, 9);
    expect(keysOf(comparison.differences)).toEqual([
      {
        name: null,
        against: null,
        yield: { value: null, low: null, high: null },
        showGapMeanMm: { value: null, low: null, high: null },
        showGapP95Mm: { value: null, low: null, high: null },
        costPerGoodPiece: { value: null, low: null, high: null },
      },
    ]);
    const [tested, line] = [comparison.methods[2], comparison.methods[0]];
    const [first] = comparison.differences;
    expect(first).toMatchObject({ name: 'Marked line', against: 'Fixed stop, tested ring' });
    expect(first.yield.value).toBeCloseTo(line.yield.value - tested.yield.value, 12);
    expect(first.showGapP95Mm.value).toBeCloseTo(line.showGapMm.p95 - tested.showGapMm.p95, 12);
    expect(first.costPerGoodPiece.value).toBeCloseTo(line.cost.perGoodPiece - tested.cost.perGoodPiece, 9);
    expect(comparison.differences.map(({ name }: { name: string }) => name)).toEqual([
      'Marked line',
      'Fixed stop',
      'Glued one by one',
    ]);
    expect(comparison.recommendation.headline).toMatch(/^Use “Fixed stop, tested ring”/);
  });

  it('has something to say about a single method', async () => {
    const { code, stdout } = await captured(['compare', fileOf(fileWith({})), '--trials', '1000']);
    expect(code).toBe(0);
    expect(stdout).toContain('“Only”: every piece comes out good enough (but for at most 4 in 1,000).');
    expect(stdout).not.toContain('Against');
  });

  it('says so, with exit code 1 and no figures, when it is stopped before the first rings', async () => {
    expect(await captured(['compare', lantern()], [], AbortSignal.abort())).toEqual({
      code: 1,
      stdout: '',
      stderr: 'Stopped before the first rings were done.\n',
    });
  });
});
