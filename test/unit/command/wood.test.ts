/** The commands about the wood itself: strips and cuts, moisture and seasons. No chance, so no seed. */
import { describe, expect, it } from 'vitest';
import { exampleProject, mirrorFrameProject, planterProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { cautionGroups, cautionsFor } from '../../../sim/wording/cautions';
import { fileWith } from '../../format/bare-file';
import { captured, fileOf, lantern, objectOf, textOf } from './captured';

async function refusalOf(...argv: string[]): Promise<string> {
  const { code, stdout, stderr } = await captured(argv);
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toMatch(/^[^\n]+\n$/);
  return stderr;
}

/** Twelve staves of oak, ripped from boards with the grain up the stave. */
const ripped = (): string =>
  fileOf(fileWith({ 'piece.grain': 'upStave', 'piece.size': { by: 'staveWidth', mm: 70 }, 'stock.wood': 'oak' }));

describe('season', () => {
  it('takes the air from a dry winter to a humid summer unless told otherwise', async () => {
    const found = await objectOf('season', lantern());
    expect(found).toMatchObject({ format: 'ringtrue-season', version: 1, title: 'Lantern base, twelve staves' });
    expect(found).not.toHaveProperty('seed');
    expect(found.air).toEqual({ temperatureC: 20, fromHumidityPercent: 35, toHumidityPercent: 65 });
    // from memory: Wood Handbook (2010), table 4–2, 6.9 and 12.0 % at 21.1 °C
    expect(found.moistureBeforePercent).toBeCloseTo(7, 0);
    expect(found.moistureAfterPercent).toBeCloseTo(12, 0);
    expect(found.moistureAfterPercent - found.moistureBeforePercent).toBeCloseTo(found.moisturePoints, 12);
    expect(found.sawings.map(({ sawing }: { sawing: string }) => sawing)).toEqual(['flatsawn', 'quartersawn']);
  });

  it('takes the air that is given, or the points of moisture', async () => {
    const still = await objectOf('season', lantern(), '--from-humidity', '50', '--to-humidity', '50');
    expect(still.moisturePoints).toBe(0);
    expect(still.sawings[0].ringSumDeg).toBeCloseTo(0, 9);
    const found = await objectOf('season', ripped(), '--points', '-4');
    expect(found).not.toHaveProperty('air');
    expect(found.moisturePoints).toBe(-4);
    expect(found.wood).toMatchObject({ named: 'oak', computedAs: 'White oak' });
    // derived: white oak with the grain up the stave, N = 12, 4 points drier: 15° → 14.8932°, ring sum −2.564°
    expect(found.sawings[0].bevelAfterDeg).toBeCloseTo(14.8932, 3);
    expect(found.sawings[0].ringSumDeg).toBeCloseTo(-2.564, 2);
    expect(found.sawings[0].outsideGapMm).toBeGreaterThan(0);
    expect(await objectOf('season', ripped(), '--points=-4')).toEqual(found);
  });

  it('says for a person which side opens, and whether the limit holds', async () => {
    const text = await textOf('season', ripped(), '--points', '-4');
    expect(text).toMatch(/^Bare\n\nThe wood dries: -4\.0 points of moisture\.\nComputed for white oak\. /);
    expect(text).toMatch(/Tilt that is in the wood +15° → 14\.893° +15° → /);
    expect(text).toMatch(/Flatsawn: .* would open by up to 0\.\d\d mm on the outside, where it shows: /);
    const frame = await textOf('season', fileOf(writeProject(mirrorFrameProject())));
    expect(frame).toMatch(/at the outer corners, where it shows: over the 0\.12 mm allowed there\./);
    expect(frame).toMatch(/Room for the insert +2\.\d+ mm \(2 mm wanted\)/);
    expect(await textOf('season', lantern(), '--points', '0')).toContain('Flatsawn: the joints stay as they are.');
  });

  it('tells sheets from solid wood, and says when it does not know how the wood moves', async () => {
    const sheet = await objectOf('season', fileOf(fileWith({ 'stock.wood': 'plywood' })));
    expect(sheet.sawings.map(({ sawing }: { sawing: string }) => sawing)).toEqual(['sheet']);
    const odd = await textOf('season', fileOf(fileWith({ 'stock.wood': 'dreamwood' })));
    expect(odd).toContain(
      'How much “dreamwood” moves is not known here. It is taken to move as a middling hardwood does',
    );
  });

  it('refuses air that is none', async () => {
    const path = lantern();
    expect(await refusalOf('season', path, '--to-humidity', '100')).toBe(
      'Option --to-humidity is "100". Give a number from 0 to 95 %.\n',
    );
    expect(await refusalOf('season', path, '--temperature', 'warm')).toContain('Give a number from -1 to 130 °C.');
    expect(await refusalOf('season', path, '--points', '31')).toContain('Give a number from -30 to 30 points.');
    expect(await refusalOf('season', path, '--points', '2', '--temperature', '18')).toBe(
      'Option --temperature is given with --points. Give the air, or the points of moisture, not both.\n',
    );
    expect(await refusalOf('season', path, '--seed', '1')).toContain('Option --seed is not known to season.');
  });
});

describe('stock', () => {
  it('lists strips and cuts in the order of the work, counted from 1', async () => {
    const path = fileOf(writeProject(planterProject()));
    const found = await objectOf('stock', path, '--method', 'Sled and stop');
    expect(found).toMatchObject({ format: 'ringtrue-stock', version: 1, lengthSigmaMm: 3, kerfSharedSigmaMm: 0.1 });
    expect(found).not.toHaveProperty('seed');
    const [method] = found.methods;
    expect(method).toMatchObject({ name: 'Sled and stop', chanceShort: null, expectedStaves: null });
    expect(
      method.strips.map(({ strip, firstStave, staves }: Record<string, number>) => [strip, firstStave, staves]),
    ).toEqual([
      [1, 1, 3],
      [2, 4, 3],
    ]);
    // turned over after every cut, three staves take four cuts, and neighbours share one
    const { cuts } = method.strips[1];
    expect(cuts.map((cut: Record<string, number>) => [cut.cut, cut.rightFaceOfStave, cut.leftFaceOfStave])).toEqual([
      [1, undefined, 4],
      [2, 4, 5],
      [3, 5, 6],
      [4, 6, undefined],
    ]);
    expect(cuts.map(({ turned }: { turned: boolean }) => turned)).toEqual([false, true, false, true]);
    expect(cuts[1].kerfToMm - cuts[0].kerfToMm).toBeCloseTo(method.pitchMm, 9);
  });

  it('gives the chance of coming up short for the spread that is given', async () => {
    const tight = { 'stock.stripLengthMm': 1490, 'methods[0].blade.kerfSigmaMm': 0 };
    const path = fileOf(fileWith(tight));
    const chance = async (...options: string[]) => (await objectOf('stock', path, ...options)).methods[0].chanceShort;
    // by hand: 1490 − 1487.71 = 2.29 mm to spare are 0.763 standard deviations of a 3 mm spread: Φ(−0.763) = 0.223
    expect(await chance('--kerf-sigma', '0')).toBeCloseTo(0.223, 3);
    expect(await chance('--kerf-sigma', '0', '--length-sigma', '0')).toBe(0);
    expect(await chance('--kerf-sigma', '1')).toBeGreaterThan(0.4);
    expect(await textOf('stock', path, '--kerf-sigma', '0')).toContain(
      'The strip comes up short of a stave with a chance of 22 in 100, for strip lengths off by 3 mm and a kerf off by 0 mm',
    );
  });

  it('prints every cut and the cautions, and the same strips only once', async () => {
    const text = await textOf('stock', lantern());
    expect(text).toMatch(/\n1 +1 to 12 +1179\.9 mm +1250\.0 mm +70\.1 mm\n/);
    expect(text).toMatch(/\n1 +24 +right face of stave 12 +end for end /);
    expect(text).toMatch(/\n1 +13 +right face of stave 12 +as begun /);
    expect(text.match(/^Strip +Cut +Makes/gm)).toHaveLength(2);
    expect(text.match(/Its strips and cuts are those of “Fixed stop”\./g)).toHaveLength(2);
    const project = exampleProject();
    for (const caution of cautionsFor(project)) expect(text).toContain(caution);
    for (const { title } of cautionGroups(project)) expect(text).toContain(`\n${title}\n- `);
    expect(text).toContain('Nothing here rates the strength of a joint.');
  });

  it('says the cautions of the method asked for, and warns on standard error of too little to hold', async () => {
    const said = async (method: string) => (await objectOf('stock', lantern(), '--method', method)).cautions;
    const project = exampleProject();
    expect(await said('Marked line')).toEqual(cautionsFor(project, [project.methods[0]!]));
    expect(await said('Fixed stop')).toEqual(cautionsFor(project, [project.methods[1]!]));
    const path = fileOf(fileWith({ 'stock.holdMm': 149 }));
    for (const argv of [
      ['stock', path, '--json'],
      ['check', path],
      ['season', path],
    ]) {
      const { code, stderr } = await captured(argv);
      expect({ code, stderr }).toEqual({
        code: 0,
        stderr:
          'Danger: only 149 mm is left to hold at the last cut. ' +
          'A part so short cannot be held safely: fingers come too near the blade. Leave at least 150 mm.\n',
      });
    }
    expect((await captured(['stock', fileOf(fileWith({ 'stock.holdMm': 150 }))])).stderr).toBe('');
  });

  it('refuses a spread that is none', async () => {
    expect(await refusalOf('stock', lantern(), '--kerf-sigma', '-1')).toBe(
      'Option --kerf-sigma is "-1". Give a number from 0 to 10 mm.\n',
    );
    expect(await refusalOf('stock', lantern(), '--trials', '100')).toContain('Option --trials is not known to stock.');
    expect(await refusalOf('stock', lantern(), '--method', 'None')).toContain('which the file does not have');
  });
});
