/** Wrong files and wrong options: exit code 2, a sentence a line on standard error, nothing on standard output, the file as it was. */
import { mkdirSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { fileWith } from '../../format/bare-file';
import { scratchFolder } from '../../support/scratch-folder';
import { captured, fileOf } from './captured';

const COMMANDS = [
  ['predict'],
  ['compare'],
  ['check'],
  ['budget'],
  ['aim'],
  ['accuracy', '--yield', '0.9'],
  ['stock'],
  ['season'],
] as const;
const bareText = JSON.stringify(fileWith({}), null, 2);

describe('a file that cannot be used', () => {
  it.each<[string, unknown, string]>([
    ['no JSON', '{"format": "ringtrue",', 'The file is not JSON: it ends at line 1, column 23'],
    ['NaN', bareText.replace('"thicknessMm": 15', '"thicknessMm": NaN'), 'has NaN where a value belongs'],
    ['a newer version', fileWith({ version: 2 }), 'version: The file is of version 2'],
    ['an unknown key', fileWith({ 'piece.colour': 'red' }), 'piece.colour: "colour" is not a key of the piece.'],
    ['zero thickness', fileWith({ 'piece.thicknessMm': 0 }), 'piece.thicknessMm: Thickness 0 mm is not above 0.'],
    ['two sides', fileWith({ 'piece.sides': 2 }), 'piece.sides: Number of sides 2 is below 3.'],
    [
      'an insert larger than the ring',
      fileWith({ 'piece.insert.diameterMm': 500 }),
      'piece.insert.diameterMm: Insert diameter 500 mm with 0 mm clearance needs 500 mm',
    ],
    ['1e308', fileWith({ 'piece.size.mm': 1e308 }), 'piece.size.mm: Size 1e+308 mm is above 5000.'],
    [
      'no opening left',
      fileWith({ 'piece.slopeDeg': 60, 'piece.heightMm': 300 }),
      'piece.size.mm: Size 400 mm across the outside flats leaves no opening',
    ],
    [
      'strips too short',
      fileWith({ 'stock.stripLengthMm': 700 }),
      'stock.stripLengthMm: Strip length 700 mm is too short: “Only” needs 1487.72 mm',
    ],
    [
      'two halves of an odd ring',
      fileWith({ 'piece.sides': 9, 'methods[0].assembly.by': 'twoHalves' }),
      'methods[0].assembly.by: “Only” is put together in two halves, which needs an even number of sides, but there are 9.',
    ],
    [
      'sides swapped with ripped staves',
      fileWith({ 'piece.grain': 'upStave', 'methods[0].sequence': 'swapSides' }),
      'methods[0].sequence: “Strip turned end for end” needs the grain around the ring',
    ],
  ])('%s', async (_, content, said) => {
    const path = fileOf(content);
    const before = readFileSync(path);
    for (const [command, ...options] of COMMANDS) {
      const { code, stdout, stderr } = await captured([command, path, ...options]);
      expect(code).toBe(2);
      expect(stdout).toBe('');
      expect(stderr).toContain(said);
      expect(stderr).toMatch(/^[^\n]+\n$/);
    }
    expect(readFileSync(path)).toEqual(before);
  });

  it('gives every problem a line of its own', async () => {
    const path = fileOf(fileWith({ 'piece.sides': 2, 'piece.heightMm': -1, 'run.seed': 0.5 }));
    const { code, stderr } = await captured(['predict', path]);
    expect(code).toBe(2);
    expect(
      stderr
        .trimEnd()
        .split('\n')
        .map((line) => line.split(':')[0]),
    ).toEqual(['piece.sides', 'piece.heightMm', 'run.seed']);
  });

  it('that is not there, is a folder, is no text or is far too large', async () => {
    const folder = scratchFolder();
    const large = join(folder, 'large.json');
    writeFileSync(large, '{');
    truncateSync(large, 101 * 1024 * 1024);
    const binary = join(folder, 'picture.json');
    writeFileSync(binary, Uint8Array.of(0xff, 0xfe, 0x00, 0x80));
    for (const [path, said] of [
      [join(folder, 'none.json'), 'does not exist. Check the name and the folder.\n'],
      [folder, 'is a folder. Name a file in it.\n'],
      [large, 'large.json has 101 MB, more than the 20 MB a project file may have.'],
      [binary, 'is not UTF-8 text. Choose a Ringtrue project file.\n'],
    ] as const) {
      const { code, stdout, stderr } = await captured(['predict', path, '--json']);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toContain(said);
      expect(stderr.split('\n')).toHaveLength(2);
    }
  });

  it('shows no control characters of its name or its content', async () => {
    const folder = scratchFolder();
    const odd = join(folder, 'a\u001b[31mb\nc.json');
    mkdirSync(odd);
    expect((await captured(['check', odd])).stderr).toContain('a\\u001b[31mb\\u000ac.json is a folder');
    const path = fileOf(fileWith({ 'methods[0].name': 'Red\u001b[31m', title: 'Two\u009b lines' }));
    const { stdout } = await captured(['check', path]);
    expect(stdout).toContain('Red\\u001b');
    expect(stdout.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });

  it('is followed through a link', async () => {
    const path = fileOf(bareText);
    const link = `${path}.link`;
    symlinkSync(path, link);
    expect((await captured(['check', link])).code).toBe(0);
  });
});

describe('standard input', () => {
  const text = writeProject(exampleProject());

  it('is read for the name -', async () => {
    const bytes = new TextEncoder().encode(text);
    const whole = await captured(['check', '-'], [text]);
    expect(whole.code).toBe(0);
    expect(await captured(['check', '-'], [bytes.subarray(0, 700), bytes.subarray(700)])).toEqual(whole);
  });

  it('is refused when it is no text, no project or too large', async () => {
    expect((await captured(['check', '-'], [Uint8Array.of(0xff)])).stderr).toBe(
      'Standard input is not UTF-8 text. Give a Ringtrue project file.\n',
    );
    expect((await captured(['check', '-'], [])).stderr).toContain('The file is empty.');
    const blanks = new Uint8Array(11 * 1024 * 1024).fill(32);
    const { code, stderr } = await captured(['check', '-'], [blanks, blanks]);
    expect(code).toBe(2);
    expect(stderr).toContain('Standard input has 22 MB, more than the 20 MB');
  });
});

describe('options that cannot be used', () => {
  it.each<[string[], string]>([
    [
      [],
      'No command is given. Give one of predict, compare, budget, test-cuts, aim, accuracy, season, stock, report, example, check, or --help.',
    ],
    [
      ['plan', 'FILE'],
      '"plan" is not a command. Give one of predict, compare, budget, test-cuts, aim, accuracy, season, stock, report, example, check, or --help.',
    ],
    [['constructor'], '"constructor" is not a command.'],
    [['--trials', '5'], '"--trials" is not a command.'],
    [['predict'], 'No file is named. Give "ringtrue predict FILE", or - to read standard input.'],
    [
      ['predict', 'FILE', '--fast'],
      'Option --fast is not known to predict. "ringtrue predict --help" lists the options.',
    ],
    [['predict', 'FILE', '-x'], 'Option -x is not known to predict.'],
    [['predict', 'FILE', '--toString'], 'Option --toString is not known to predict.'],
    [['predict', 'FILE', 'b.json'], '"b.json" is one name too many.'],
    [['predict', 'FILE', '--trials'], 'Option --trials has no value.'],
    [['predict', 'FILE', '--trials', '99'], 'Option --trials is "99". Give a whole number from 100 to 10000000.'],
    [['predict', 'FILE', '--trials', '10000001'], 'Option --trials is "10000001".'],
    [['predict', 'FILE', '--trials', '1e5'], 'Option --trials is "1e5".'],
    [['predict', 'FILE', '--trials=-500'], 'Option --trials is "-500".'],
    [['predict', 'FILE', '--trials', ''], 'Option --trials is "".'],
    [
      ['predict', 'FILE', '--seed', '4294967296'],
      'Option --seed is "4294967296". Give a whole number from 0 to 4294967295.',
    ],
    [['predict', 'FILE', '--seed', '1.5'], 'Option --seed is "1.5".'],
    [['predict', 'FILE', '--rule', 'exact'], 'Option --rule is "exact". Give one of contact, touch.'],
    [
      ['predict', 'FILE', '--method', 'None'],
      'Option --method is "None", which the file does not have. Give one of "Only".',
    ],
    [['predict', 'FILE', '--json=yes'], 'Option --json takes no value. Leave out "=…".'],
    [['predict', 'FILE', '--workers', '0'], 'Option --workers is "0". Give a whole number from 1 to 256.'],
    [['compare', 'FILE', '--which', 'planter'], 'Option --which is not known to compare.'],
    [['check', 'FILE', '--json'], 'Option --json is not known to check.'],
    [['example', '--which', 'vase'], 'Option --which is "vase". Give one of lantern, planter, mirror-frame.'],
    [['example', 'out.json'], '"out.json" is one name too many.'],
  ])('%j', async (argv, said) => {
    const path = fileOf(bareText);
    const { code, stdout, stderr } = await captured(argv.map((word) => (word === 'FILE' ? path : word)));
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(said);
    expect(stderr.split('\n')).toHaveLength(2);
  });

  it('are all named, a line each', async () => {
    const { stderr } = await captured(['predict', 'FILE', '--fast', '--json=1', '--seed']);
    expect(stderr.trimEnd().split('\n')).toHaveLength(3);
  });
});
