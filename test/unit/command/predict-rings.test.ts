import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../support/read-csv';
import { scratchFolder } from '../../support/scratch-folder';
import { captured, lantern } from './captured';

describe('predict --rings', () => {
  const options = ['--trials', '500', '--json', '--method', 'Fixed stop'];

  it('writes every ring of the method beside its one object', async () => {
    const path = join(scratchFolder(), 'rings.csv');
    const { code, stdout, stderr } = await captured(['predict', lantern(), ...options, '--rings', path]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const { origin, rows } = readTable(readFileSync(path, 'utf8'));
    expect(origin).toMatchObject({ Table: 'Single rings of “Fixed stop”', Seed: '7' });
    expect(rows).toHaveLength(500);
    const good = rows.filter(([, , , isGood]) => isGood === '1').length;
    expect(JSON.parse(stdout).methods[0].yield.value).toBe(good / 500);
  });

  it.each([
    [['--rings', 'rings.xls'], 'Option --rings is "rings.xls". Give a name that ends in .csv.'],
    [['--rings', 'none/rings.csv'], 'cannot be written'],
  ])('refuses %j', async (args, sentence) => {
    const { code, stdout, stderr } = await captured(['predict', lantern(), ...options, ...args]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(sentence);
  });

  it('wants one method, and keeps a file that is there already unless forced', async () => {
    const path = join(scratchFolder(), 'rings.csv');
    const all = await captured(['predict', lantern(), '--trials', '500', '--rings', path]);
    expect(all).toMatchObject({ code: 2, stderr: expect.stringContaining('Name it with --method.') });
    expect(existsSync(path)).toBe(false);
    writeFileSync(path, 'mine');
    const kept = await captured(['predict', lantern(), ...options, '--rings', path]);
    expect(kept).toMatchObject({ code: 2, stderr: expect.stringContaining('is there already and is kept') });
    expect(readFileSync(path, 'utf8')).toBe('mine');
    expect((await captured(['predict', lantern(), ...options, '--rings', path, '--force'])).code).toBe(0);
    expect(readTable(readFileSync(path, 'utf8')).rows).toHaveLength(500);
  });
});
