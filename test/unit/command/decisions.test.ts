/** The commands that ask one question of every method. */
import { describe, expect, it, vi } from 'vitest';
import type { Project } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { CAUTIONS_COMMAND_LINE } from '../../../sim/wording/cautions';
import { fileWith } from '../../format/bare-file';
import { keysOf } from '../../support/keys-of';
import { captured, fileOf, objectOf, textOf } from './captured';

// Long enough for a machine that is busy with other work.
vi.setConfig({ testTimeout: 120_000 });

/** Twelve upright staves whose tilt alone is off, closed by touch, so that everything is quick. */
const tilted = (changes: Record<string, unknown> = {}): string =>
  fileOf(fileWith({ 'methods[0].tilt.sharedDeg': 0.2, 'run.rule': 'touch', 'run.seed': 5, ...changes }));

const estimate = { value: null, low: null, high: null };

interface Question {
  command: string;
  needed: string[];
  /** Keys of a method's entry after its name, rule and trials. */
  keys: Record<string, unknown>;
}

const QUESTIONS: Question[] = [
  {
    command: 'budget',
    needed: [],
    keys: {
      indexTrials: null,
      showGapP95Mm: null,
      sources: [
        {
          source: null,
          varianceShare: null,
          showGapP95WithoutMm: null,
          showGapP95ChangeMm: estimate,
          firstOrderIndex: estimate,
          totalIndex: estimate,
        },
      ],
    },
  },
  {
    command: 'test-cuts',
    needed: [],
    keys: {
      jobs: null,
      kind: null,
      reading: { setting: null, mmPerDeg: null },
      bestRounds: null,
      rounds: [
        {
          maxRounds: null,
          yield: estimate,
          cost: { perGoodPiece: null, low: null, high: null, minutesPerPiece: null, testRounds: null },
          extraCostPerJob: estimate,
          paysChance: estimate,
        },
      ],
    },
  },
  {
    command: 'aim',
    needed: [],
    keys: {
      aimDeg: null,
      alikeDeg: { from: null, to: null },
      yield: estimate,
      gain: estimate,
      curve: [{ aimDeg: null, yield: estimate }],
    },
  },
  {
    command: 'accuracy',
    needed: ['--yield', '0.9'],
    keys: {
      yieldWanted: null,
      yieldNow: null,
      sources: [
        { source: null, factor: null, figures: [{ key: null, now: null, needed: null }], yieldIfPerfect: null },
      ],
      inTheWay: [],
      balanced: [{ source: null, factor: null, figures: [{ key: null, now: null, needed: null }] }],
    },
  },
];

describe.each(QUESTIONS)('$command', ({ command, needed, keys }) => {
  it('writes one object with its name, its seed and one entry a method', async () => {
    const project: Project = { ...exampleProject(), run: { trials: 100, seed: 7, rule: 'touch' } };
    const all = await objectOf(command, fileOf(writeProject(project)), ...needed, '--trials', '100');
    expect(all).toMatchObject({ format: `ringtrue-${command}`, version: 1, title: project.title, seed: 7 });
    expect(all.methods.map(({ name, rule, trials }: Record<string, unknown>) => ({ name, rule, trials }))).toEqual([
      { name: 'Marked line', rule: 'touch', trials: 100 },
      { name: 'Fixed stop', rule: 'touch', trials: 100 },
      { name: 'Fixed stop, tested ring', rule: 'touch', trials: 100 },
      { name: 'Glued one by one', rule: 'contact', trials: 100 },
    ]);
  });

  it('writes exactly the keys that machines read', async () => {
    const found = await objectOf(command, tilted(), ...needed, '--trials', '1000');
    expect(keysOf(found.methods)).toEqual([{ name: null, rule: null, trials: null, ...keys }]);
  });

  it('gives the same digits for the same seed and others for another', async () => {
    const path = tilted({ 'methods[0].tilt.perCutDeg': 0.1 });
    const [once, again, other] = await Promise.all(
      ['5', '5', '6'].map((seed) => objectOf(command, path, ...needed, '--trials', '1000', '--seed', seed)),
    );
    expect(again).toEqual(once);
    expect(other.seed).toBe(6);
    expect(other.methods).not.toEqual(once.methods);
  });

  it('gives a method the same digits alone as among others', async () => {
    const project = mirrorFrameProject();
    const path = fileOf(writeProject(project));
    const quick = [...needed, '--trials', '200', '--rule', 'touch'];
    const all = await objectOf(command, path, ...quick);
    const alone = await objectOf(command, path, ...quick, '--method', 'Sled and stop');
    expect(alone.methods).toEqual([all.methods[1]]);
  });

  it('prints a sentence and a table for a person', async () => {
    const text = await textOf(command, tilted(), ...needed, '--trials', '1000');
    expect(text).toMatch(/^Bare\n\n“Only”/);
    // Only these two say what to do at the saw.
    const isAtTheSaw = command === 'test-cuts' || command === 'aim';
    expect(text.split('\n').filter((line) => line === CAUTIONS_COMMAND_LINE)).toHaveLength(isAtTheSaw ? 1 : 0);
    expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('refuses what it cannot use, a line for each problem', async () => {
    const path = tilted();
    for (const [argv, said] of [
      [[command, ...needed], `No file is named. Give "ringtrue ${command} FILE", or - to read standard input.`],
      [[command, path, ...needed, '--fast'], `Option --fast is not known to ${command}.`],
      [[command, path, ...needed, '--trials', '99'], 'Option --trials is "99". Give a whole number from 100'],
      [[command, path, ...needed, '--method', 'None'], 'Option --method is "None", which the file does not have.'],
      [[command, path, ...needed, '--budget'], `Option --budget is not known to ${command}.`],
    ] as const) {
      const { code, stdout, stderr } = await captured(argv);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toContain(said);
      expect(stderr).toMatch(/^[^\n]+\n$/);
    }
  });

  it('tells its progress to a person at a terminal, and wipes it away', async () => {
    const { runCommand } = await import('../../../main/command/ringtrue');
    const err: string[] = [];
    const code = await runCommand([command, tilted(), ...needed, '--trials', '200'], {
      stdout: { write: () => true },
      stderr: { write: (text) => err.push(text), isTTY: true },
    });
    expect(code).toBe(0);
    expect(err[0]).toMatch(/Simulating … \d+ %$/);
    expect(err.at(-1)).toBe('\r\u001b[K');
  });
});

describe('budget', () => {
  it('gives predict’s lines, digit for digit, and predict no more than it had', async () => {
    const path = tilted({ 'methods[0].tilt.perCutDeg': 0.1 });
    const [predicted] = (await objectOf('predict', path, '--budget', '--trials', '100')).methods;
    const [{ sources }] = (await objectOf('budget', path)).methods;
    const lines = sources.map(({ source, varianceShare, showGapP95WithoutMm }: Record<string, unknown>) => {
      return { source, varianceShare, showGapP95WithoutMm };
    });
    expect(predicted.budget).toEqual(lines);
  });

  it('names the source that the gap comes from, and leaves out what hardly matters', async () => {
    const text = await textOf('budget', tilted({ 'methods[0].guide.zeroDeg': 0.1 }), '--trials', '2000');
    expect(text).toMatch(/^“Only”: where does the gap come from\?\nMostly from the tilt setting: /m);
    expect(text).toMatch(/\nTilt setting +100 % +0\.000 mm +-0\.\d+ mm \(-0\.\d+ to -0\.\d+\)/);
    expect(text).toContain('Hardly anything comes from: guide not square.');
  });

  it('says so when there is no error at all', async () => {
    expect(await textOf('budget', fileOf(fileWith({})), '--trials', '100')).toContain(
      'no source of error is above zero',
    );
  });
});

describe('test-cuts', () => {
  it('counts the stock and the minutes of the file', async () => {
    const costs = { batch: 3, stockPerRing: 40, testStockPerRound: 6, ratePerHour: 30, assemblyMinutes: 35 };
    const text = await textOf(
      'test-cuts',
      tilted({ costs, 'methods[0].minutes': { setUp: 20, perCut: 0.5, perTestRound: 15 } }),
      '--trials',
      '400',
    );
    expect(text).toContain(
      'Counted for a job of 3 good pieces: stock of 40.00 a ring and 6.00 a test round; 20 min for a set-up, ' +
        '15 min for a test round, 0.5 min for a cut and 35 min for a glue-up, at 30.00 an hour.',
    );
  });
});

describe('aim', () => {
  it('says what to set the saw to', async () => {
    const text = await textOf(
      'aim',
      tilted({ limits: { showGapMm: 0.05, hiddenGapMm: 0.3, remedyGapMm: 0.3 }, 'methods[0].tilt.aimDeg': 0.1 }),
      '--trials',
      '2000',
    );
    expect(text).toMatch(/“Only”: set the tilt to 15\.\d+°, 0\.\d+° over what the ring asks for/);
    expect(text).toContain('The file has it aimed 0.1° over what the ring asks for.');
    expect(text).toMatch(/\n0° +\d+ in 100/);
  });

  it('leaves a flat frame’s blade square: a tilt would close it as well, and cup it', async () => {
    const path = fileOf(writeProject(mirrorFrameProject()));
    const found = await objectOf('aim', path, '--trials', '200', '--method', 'Sled and stop');
    expect(found.methods[0]).toMatchObject({ aimDeg: 0, gain: { value: 0, low: 0, high: 0 } });
    expect(await textOf('aim', path, '--trials', '200', '--method', 'Sled and stop')).toContain(
      'a flat frame is cut with the blade square',
    );
  });

  it('leaves the tilt where it is when both sides count alike', async () => {
    const limits = { showGapMm: 0.1, hiddenGapMm: 0.1, remedyGapMm: 0.1 };
    expect(await textOf('aim', tilted({ limits }), '--trials', '2000')).toContain('“Only”: leave the tilt at 15°');
  });
});

describe('accuracy', () => {
  it('wants to know the share of good pieces', async () => {
    const path = tilted();
    for (const [argv, said] of [
      [[], 'Option --yield is missing. Give the share of pieces wanted good, such as 0.95.'],
      [['--yield', '95'], 'Option --yield is "95". Give a number above 0 and up to 1.'],
      [['--yield', '0'], 'Option --yield is "0". Give a number above 0 and up to 1.'],
      [['--yield', 'most'], 'Option --yield is "most".'],
    ] as const) {
      const { code, stdout, stderr } = await captured(['accuracy', path, ...argv]);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toContain(said);
    }
  });

  it('names the figure to better and what it is in the way of', async () => {
    const limits = { showGapMm: 0.05, hiddenGapMm: 0.05, remedyGapMm: 0.05 };
    const text = await textOf('accuracy', tilted({ limits }), '--yield', '0.95', '--trials', '1000');
    expect(text).toMatch(/One alone would do it: tilt setting at 0\.0\d+° in place of 0\.2°\./);
    expect(text).toContain('In the way whatever else is made better: tilt setting.');
    expect(text).toMatch(/Tilt setting +Shared tilt error +0\.2° +0\.0\d+° +0\.0\d+° +all/);
  });

  it('says when nothing has to be better, and how much worse would do', async () => {
    const text = await textOf('accuracy', tilted(), '--yield', '0.1', '--trials', '400');
    expect(text).toContain('nothing has to be better');
    expect(text).toMatch(/Shared tilt error +0\.2° +1\.\d+°( or worse)?/);
  });
});
