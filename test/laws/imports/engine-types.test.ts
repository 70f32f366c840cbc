import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../../../main/ready.mjs';

/** Names of a browser, of Node and of the clock that both have. */
const FOREIGN = ['window', 'document', 'process', 'Buffer', 'performance', 'setTimeout', 'console', 'fetch'];

describe("the engine's compiler settings", () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringtrue-engine-types-'));
  let complaints = '';

  beforeAll(async () => {
    const settings = { extends: join(ROOT, 'sim', 'tsconfig.json'), include: [folder] };
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(settings));
    for (const name of FOREIGN) writeFileSync(join(folder, `${name}.ts`), `export const foreign: unknown = ${name};\n`);
    writeFileSync(join(folder, 'own.ts'), 'export const own: number = Math.sqrt(new Float64Array([4])[0] ?? 0);\n');
    complaints = await new Promise((resolve) => {
      const compiler = join(ROOT, 'node_modules', '.bin', 'tsc');
      execFile(compiler, ['-p', folder, '--pretty', 'false'], { cwd: folder }, (_error, output) => resolve(output));
    });
  });

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(FOREIGN)('do not know %s', (name) => {
    expect(complaints).toMatch(
      new RegExp(`^\\S*${name}\\.ts\\(1,\\d+\\): error TS2\\d+: Cannot find name '${name}'`, 'm'),
    );
  });

  it('know the language itself', () => {
    expect(complaints).not.toContain('own.ts');
  });
});
