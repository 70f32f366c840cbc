import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { EXAMPLES, exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { readProject } from '../../../sim/reading/read';
import type { Prediction } from '../../../sim/run/prediction';
import { fileWith } from '../../format/bare-file';
import { keysOf } from '../../support/keys-of';
import { scratchFolder } from '../../support/scratch-folder';
import { captured, fileOf, lantern } from './captured';

async function predicted(...options: string[]): Promise<Prediction> {
  const { code, stdout, stderr } = await captured(['predict', lantern(), '--json', '--trials', '500', ...options]);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  return JSON.parse(stdout);
}

describe('predict --json', () => {
  it('writes one object with exactly the documented keys', async () => {
    const gaps = { mean: null, sd: null, p50: null, p90: null, p95: null, p99: null };
    const spread = { mean: null, sd: null, p05: null, p50: null, p95: null };
    const share = { value: null, low: null, high: null };
    const withBudget = await predicted('--method', 'Marked line', '--budget');
    expect(keysOf(withBudget)).toEqual({
      format: null,
      version: null,
      title: null,
      seed: null,
      geometry: {
        bevelDeg: null,
        crosscutDeg: null,
        staveWidthMm: null,
        staveWidthMidMm: null,
        outsideFlatsMm: null,
        outsideCornersMm: null,
        clearOpeningWideMm: null,
        clearOpeningNarrowMm: null,
        jointLengthMm: null,
      },
      methods: [
        {
          name: null,
          trials: null,
          rule: null,
          stopReason: null,
          cuts: null,
          pitchMm: null,
          stripNeededMm: null,
          tiltSharedAfterTestDeg: { mean: null, sd: null },
          mouthMm: spread,
          showGapMm: gaps,
          hiddenGapMm: gaps,
          jointShowGapP95Mm: [],
          clearOpeningMm: spread,
          yield: share,
          insertFits: share,
          willNotClose: share,
          budget: [{ source: null, varianceShare: null, showGapP95WithoutMm: null }],
          cost: { perGoodPiece: null, low: null, high: null, minutesPerPiece: null, testRounds: null },
        },
      ],
    });
    expect(withBudget).toMatchObject({
      format: 'ringtrue-prediction',
      version: 1,
      title: 'Lantern base, twelve staves',
      seed: 7,
    });
  }, 120_000);

  it('tells how far touch is from contact where it is asked to, for each method', async () => {
    const { methods } = await predicted('--touch-excess', '--trials', '500');
    const excessOf = (name: string) => methods.find((method) => method.name === name)?.touchExcess;
    const pulledUp = excessOf('Marked line');
    expect(keysOf(pulledUp)).toEqual({ trials: null, meanMm: null, p95Mm: null });
    expect(pulledUp?.p95Mm).toBeGreaterThan(pulledUp?.meanMm ?? Number.NaN);
    // Touch has no say there.
    expect(excessOf('Glued one by one')).toBeNull();
    expect((await predicted('--trials', '500')).methods[0]).not.toHaveProperty('touchExcess');
    const { stdout } = await captured(['predict', lantern(), '--trials', '500']);
    expect(stdout.match(/^Touch, the quick rule, /gm)).toHaveLength(3);
    expect(stdout.match(/^Rings assembled this way are always worked out by contact/gm)).toHaveLength(1);
  });

  it('gives the numbers that follow from the piece alone', async () => {
    const { geometry, methods } = await predicted('--method', 'Marked line');
    // As printed with the file format's example; 280·tan 15° = 75.026, 280/cos 15° = 289.877, 15/cos 15° = 15.529.
    expect(geometry.bevelDeg).toBeCloseTo(15, 9);
    expect(geometry.crosscutDeg).toBe(0);
    expect(geometry.staveWidthMm).toBeCloseTo(75.026, 3);
    expect(geometry.outsideCornersMm).toBeCloseTo(289.877, 3);
    expect(geometry.clearOpeningNarrowMm).toBeCloseTo(250, 9);
    expect(geometry.jointLengthMm).toBeCloseTo(15.529, 3);
    expect(methods[0]).toMatchObject({ cuts: 24, stopReason: 'trial-limit' });
    expect(methods[0]?.pitchMm).toBeCloseTo(80.41, 2);
    expect(methods[0]?.stripNeededMm).toBeCloseTo(1179.91, 2);
    expect(methods[0]?.jointShowGapP95Mm).toHaveLength(12);
  });

  it('leaves the budget out unless asked, the last word counting', async () => {
    for (const options of [[], ['--no-budget'], ['--budget', '--no-budget']]) {
      const { methods } = await predicted('--method', 'Fixed stop', ...options);
      expect(methods[0]).not.toHaveProperty('budget');
    }
  });

  it('makes exactly the rings asked for', async () => {
    for (const trials of [100, 2001]) {
      const { methods } = await predicted('--trials', `${trials}`, '--method', 'Fixed stop');
      expect(methods.map((method) => method.trials)).toEqual([trials]);
    }
  });

  it('makes exactly the rings asked for even where the file would settle for fewer', async () => {
    const path = fileOf(fileWith({ 'run.settle.relative': 1 }));
    const { stdout } = await captured(['predict', path, '--json', '--trials', '60000']);
    expect(JSON.parse(stdout).methods[0]).toMatchObject({ trials: 60000, stopReason: 'trial-limit' });
    const settled = JSON.parse((await captured(['predict', path, '--json'])).stdout);
    expect(settled.methods[0].stopReason).toBe('settled');
    expect(settled.methods[0].trials).toBeLessThan(60000);
  });

  it('writes the same bytes for the same input, and the time it took only where it is asked for', async () => {
    for (const command of ['predict', 'compare']) {
      const written = async (...options: string[]) =>
        (await captured([command, lantern(), '--json', '--trials', '500', ...options])).stdout;
      const once = await written();
      expect(await written('--workers', '2')).toBe(once);
      expect(once).not.toContain('elapsedMs');
      const timed = await written('--timing');
      expect(timed).toMatch(/"rule": "contact",\n +"elapsedMs": \d+,/);
      expect(timed.replace(/\n +"elapsedMs": \d+,/g, '')).toBe(once);
    }
  });

  it('gives the same digits for the same seed, others for another', async () => {
    const [once, again, other] = [await predicted(), await predicted(), await predicted('--seed', '8')];
    expect(again).toEqual(once);
    expect(other.seed).toBe(8);
    expect(other.methods[0]?.showGapMm.mean).not.toBe(once.methods[0]?.showGapMm.mean);
  });

  it('gives a method the same digits alone as among others', async () => {
    const all = await predicted();
    const alone = await predicted('--method', 'Fixed stop, tested ring');
    expect(all.methods.map(({ name }) => name)).toEqual([
      'Marked line',
      'Fixed stop',
      'Fixed stop, tested ring',
      'Glued one by one',
    ]);
    expect(alone.methods[0]).toEqual(all.methods[2]);
  });

  it('computes by the rule asked for, but one by one always by contact', async () => {
    const { methods } = await predicted('--rule', 'touch');
    expect(methods.map(({ rule }) => rule)).toEqual(['touch', 'touch', 'touch', 'contact']);
  });

  it('does not write to the file', async () => {
    const path = lantern();
    const before = readFileSync(path);
    await captured(['predict', path, '--trials', '100']);
    expect(readFileSync(path)).toEqual(before);
  });
});

describe('predict without --json', () => {
  it('prints the ring and every method, and says what is worth a second look', async () => {
    const { code, stdout, stderr } = await captured(['predict', lantern(), '--trials', '100', '--rule', 'touch']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^Lantern base, twelve staves\n\nNote: methods\[3\]\.assembly\.by: Glued one by one/);
    // Three methods may be closed by either rule; the one glued one by one may not.
    expect(stdout.match(/^Touch, the quick rule, /gm)).toHaveLength(3);
    for (const said of [
      'Blade tilt from square       15°',
      '\nMarked line\n',
      '\nGlued one by one\n',
      '100, by touch',
    ]) {
      expect(stdout).toContain(said);
    }
  });

  it('prints the budget when asked', async () => {
    const path = fileOf(fileWith({ 'methods[0].tilt.sharedDeg': 0.1 }));
    const { stdout } = await captured(['predict', path, '--trials', '100', '--budget']);
    expect(stdout).toMatch(/Where the gap comes from +Share +If it were perfect, 95 of 100 under\nTilt setting +100 %/);
  }, 120_000);
});

describe('example', () => {
  it.each(Object.keys(EXAMPLES))('prints %s, fit to be read', async (name) => {
    const { code, stdout } = await captured(['example', '--which', name]);
    expect(code).toBe(0);
    expect(readProject(stdout)).toEqual({ ok: true, project: EXAMPLES[name]?.() });
  });

  it('prints the lantern unless told otherwise', async () => {
    expect((await captured(['example'])).stdout).toBe(writeProject(exampleProject()));
  });

  it('writes a file, and over one only when forced', async () => {
    const path = join(scratchFolder(), 'new.ringtrue.json');
    expect(await captured(['example', '--out', path])).toEqual({ code: 0, stdout: `Wrote ${path}.\n`, stderr: '' });
    expect(readFileSync(path, 'utf8')).toBe(writeProject(exampleProject()));
    writeFileSync(path, 'mine');
    const refused = await captured(['example', '--out', path]);
    expect(refused).toMatchObject({ code: 2, stdout: '' });
    expect(refused.stderr).toContain('is there already and is kept. Give another name, or --force to write over it.');
    expect(readFileSync(path, 'utf8')).toBe('mine');
    expect((await captured(['example', '--out', path, '--force'])).code).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(writeProject(exampleProject()));
  });

  it('refuses a folder that is not there', async () => {
    const path = join(scratchFolder(), 'none', 'new.json');
    expect(await captured(['example', '--out', path])).toMatchObject({ code: 2, stdout: '' });
    expect(existsSync(path)).toBe(false);
  });
});

describe('check', () => {
  it('says that a file is fine and what it holds', async () => {
    const { code, stdout, stderr } = await captured(['check', lantern()]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^The file is fine: 12 sides, slope 0°, 4 methods: “Marked line”, “Fixed stop”, /);
  });

  it('says what is worth a second look', async () => {
    const { code, stdout } = await captured(['check', fileOf(fileWith({ 'piece.heightMm': 240 }))]);
    expect(code).toBe(0);
    expect(stdout).toContain('Note: piece.heightMm: Height 240 mm is a lot to crosscut');
  });
});

const COMMANDS = [
  'predict',
  'compare',
  'budget',
  'test-cuts',
  'aim',
  'accuracy',
  'season',
  'stock',
  'example',
  'check',
] as const;

describe('--help', () => {
  it.each([[['--help']], [['-h']], [['help']]])('%j lists the commands', async (argv) => {
    const { code, stdout } = await captured(argv);
    expect(code).toBe(0);
    for (const name of COMMANDS) expect(stdout).toContain(`  ringtrue ${name} `);
  });

  it.each(COMMANDS)('%s --help tells about it, whatever else is given', async (name) => {
    const { code, stdout, stderr } = await captured([name, 'none.json', '--help', '--nonsense']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout.startsWith(`ringtrue ${name}`)).toBe(true);
  });

  const RINGS = ['json', 'trials', 'seed', 'rule', 'method'];
  it.each([
    ['predict', [...RINGS, 'budget', 'no-budget', 'timing', 'touch-excess', 'rings', 'force']],
    ['compare', [...RINGS, 'budget', 'no-budget', 'timing']],
    ['budget', RINGS],
    ['test-cuts', RINGS],
    ['aim', RINGS],
    ['accuracy', [...RINGS, 'yield']],
    ['season', ['json', 'from-humidity', 'to-humidity', 'temperature', 'points']],
    ['stock', ['json', 'method', 'kerf-sigma', 'length-sigma']],
  ])('of %s names every option there is, but for the number of workers', async (command, names) => {
    const said = (await captured([command, '--help'])).stdout;
    const told = new Set([...said.matchAll(/--([a-z-]+)/g)].map(([, name]) => name));
    expect([...told].sort()).toEqual([...names].sort());
  });
});

describe('progress', () => {
  it('is shown on standard error to a person at a terminal, and wiped away', async () => {
    const { runCommand } = await import('../../../main/command/ringtrue');
    const err: string[] = [];
    const code = await runCommand(['predict', lantern(), '--json', '--trials', '3000'], {
      stdout: { write: () => true },
      stderr: { write: (text) => err.push(text), isTTY: true },
    });
    expect(code).toBe(0);
    expect(err[0]).toMatch(/Simulating … \d+ %$/);
    expect(err.at(-1)).toBe('\r\u001b[K');
  });
});

describe('an output that breaks', () => {
  it('ends with exit code 1 and says why', async () => {
    const { runCommand } = await import('../../../main/command/ringtrue');
    const err: string[] = [];
    const code = await runCommand(['example'], {
      stdout: {
        write: () => {
          throw new Error('no room left');
        },
      },
      stderr: { write: (text) => err.push(text) },
    });
    expect(code).toBe(1);
    expect(err.join('')).toContain('Ringtrue broke off: Error: no room left');
  });
});
