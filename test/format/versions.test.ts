/** One saved sample per version, kept for good, and the steps that bring old files up. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exampleProject } from '../../sim/project/example';
import { type MigrationStep, migrate } from '../../sim/project/migrate';
import { readProject } from '../../sim/reading/read';

const sample = (version: number): string =>
  readFileSync(new URL(`./samples/version-${version}.ringtrue.json`, import.meta.url), 'utf8');

describe('saved samples', () => {
  it('reads version 1 as the lantern with its first method', () => {
    const outcome = readProject(sample(1));
    const lantern = exampleProject();
    expect(outcome).toEqual({ ok: true, project: { ...lantern, methods: lantern.methods.slice(0, 1) } });
  });
});

describe('migration', () => {
  // No program ever wrote version 0: the sample stands for a file older than the present version, with a key that was
  // renamed since, and goes the whole way from text to project.
  it('brings a whole file of an older version up, from text to project', () => {
    const renamed: MigrationStep = ({ piece, ...file }) => {
      const { staves, ...rest } = piece as Record<string, unknown>;
      return { ...file, version: 1, piece: { ...rest, sides: staves } };
    };
    expect(readProject(sample(0), new Map([[0, renamed]]))).toEqual(readProject(sample(1)));
    expect(readProject(sample(0))).toMatchObject({ ok: false, problems: [{ path: 'version' }] });
    const forgetful = new Map<number, MigrationStep>([[0, (file) => ({ ...file, version: 1 })]]);
    expect(readProject(sample(0), forgetful)).toMatchObject({ ok: false });
  });

  const steps = new Map<number, MigrationStep>([
    [1, (file) => ({ ...file, version: 2, added: 'in two' })],
    [2, (file) => ({ ...file, version: 3, added: `${file.added}, changed in three` })],
  ]);

  it('takes every step from the version of the file to the present one', () => {
    expect(migrate({ version: 1, kept: 1 }, steps, 3)).toEqual({
      ok: true,
      file: { version: 3, kept: 1, added: 'in two, changed in three' },
    });
  });

  it('leaves a file of the present version alone', () => {
    const file = { version: 3 };
    expect(migrate(file, steps, 3)).toEqual({ ok: true, file });
  });

  it('does not change the object it was given, even when a step does', () => {
    const careless = new Map<number, MigrationStep>([
      [
        1,
        (file) => {
          file.version = 2;
          (file.group as { key: number }).key = 9;
          return file;
        },
      ],
    ]);
    const file = { version: 1, group: { key: 1 } };
    expect(migrate(file, careless, 2)).toEqual({ ok: true, file: { version: 2, group: { key: 9 } } });
    expect(file).toEqual({ version: 1, group: { key: 1 } });
  });

  it('refuses a version nobody wrote', () => {
    expect(migrate({ version: -4 }, steps, 3)).toMatchObject({ ok: false, problem: { path: 'version' } });
    expect(migrate({ version: 4 }, steps, 3)).toMatchObject({ ok: false, problem: { path: 'version' } });
  });
});
