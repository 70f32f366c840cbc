import { describe, expect, it } from 'vitest';
import type { Method } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject } from '../../../sim/project/example';
import { makingSentences } from '../../../sim/wording/making';
import { resultLike } from './result-like';

const project = exampleProject();
const [line, stop, tested, oneByOne] = project.methods as [Method, Method, Method, Method];
const result = resultLike('Any');
const making = (method: Method): string => makingSentences(project, method, result).join(' ');

describe('what is done about it', () => {
  it('tells what test cuts take out of the shared error', () => {
    const after = resultLike(tested.name, { tiltSharedAfterTestDeg: { mean: 0, sd: 0.028 } });
    // Evenly spread within ±0.5°: standard deviation 0.5/√3 = 0.289 (closed form).
    expect(makingSentences(project, tested, after)).toContain(
      'First a whole ring of scrap wood is cut and put together dry, up to twice, and the saw is put right by what it ' +
        'shows: the error of its angle goes from typically 0.29° down to 0.03°.',
    );
  });

  it('claims nothing of test cuts that are not made', () => {
    expect(making(stop)).not.toContain('scrap');
  });

  it('does not speak of the tilt where the blade stands square', () => {
    const frame = mirrorFrameProject();
    expect(makingSentences(frame, frame.methods[1]!, result).join(' ')).not.toContain('set to its angle');
  });

  it('follows the figures, whatever preset they are near', () => {
    // Every figure of the strap's preset but the one that says how the ring is glued.
    const strap = { ...stop.assembly, ends: 'free', pullUpMm: 0.05 } as const;
    const glued = making({ ...stop, assembly: { ...strap, by: 'oneByOne' } });
    expect(glued).toContain('glued one after another; the last three joints are closed together');
    expect(glued).not.toMatch(/at once|strap/);
    expect(making({ ...stop, assembly: strap })).toContain('All 12 joints are glued and pulled together at once');
    expect(making({ ...oneByOne, assembly: { ...oneByOne.assembly, freeJoints: 2 } })).toContain('the last two joints');
    expect(making({ ...stop, assembly: { ...strap, by: 'twoHalves', truingMm: 0.07 } })).toContain(
      'planed flat to within about 0.14 mm',
    );
  });

  it('tells how well the tilt is set: twice a normal spread, all of an even one, and the bias', () => {
    expect(making(line)).toContain('set to its angle to within about 0.2°.');
    expect(making(stop)).toContain('set to its angle to within about 0.5°.');
    expect(making({ ...line, tilt: { ...line.tilt, sharedDeg: 0.02, biasDeg: -0.3 } })).toContain('about 0.34°.');
    expect(making({ ...line, tilt: { ...line.tilt, reset: 'everyCut' } })).toContain('0.2°, anew for every cut.');
  });

  it('tells how the width is held by its own kind and figures', () => {
    expect(making(line)).toContain('cut to marked lines by eye, alike to within about 0.5 mm.');
    const clean = { ...stop.width, perCutMm: 0.02, driftSigmaMm: 0, chipChance: 0 };
    expect(making({ ...stop, width: clean })).toContain('equally wide, alike to within about 0.04 mm.');
    expect(making(stop)).toContain('it may creep a little, and a chip may get caught at it.');
  });

  it('says inches where inches are shown', () => {
    const inches = { ...project, display: 'inch' } as const;
    for (const method of project.methods) {
      expect(makingSentences(inches, method, result).join(' ')).not.toMatch(/\d mm/);
    }
  });
});
