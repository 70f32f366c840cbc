import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import packageFile from '../../../package.json' with { type: 'json' };
import type { Project } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject, planterProject } from '../../../sim/project/example';
import type { MethodResult } from '../../../sim/run/prediction';
import { PROGRAM_VERSION } from '../../../sim/version';
import {
  basisSentence,
  chanceSentence,
  closingParagraphs,
  dotsText,
  expectSentences,
  explainedResult,
  eyeSentences,
  makingSentences,
  pieceSentence,
  remainsSentences,
  seasonGapSentences,
  whySentences,
} from '../../../sim/wording/explain';
import { resultLike, share } from './result-like';

const project = exampleProject();
const stop = resultLike('Fixed stop');

function graded(good: number, rework: number, scrap: number): MethodResult {
  const trials = good + rework + scrap;
  return { ...resultLike('Graded', { trials }), grades: { good, rework, scrap } };
}

describe('the piece', () => {
  it('is told by what can be seen and measured', () => {
    expect(pieceSentence(project)).toBe(
      'Twelve staves of oak, upright, 280 mm over the outside flats, 140 mm high and 15 mm thick. ' +
        'The opening is 250 mm across, for what measures 236 mm.',
    );
    expect(pieceSentence(planterProject())).toMatch(/^Six staves of walnut, leaning 15° from upright, /);
    expect(pieceSentence(mirrorFrameProject())).toMatch(/^Eight members of cherry, lying flat, .* 60 mm wide/);
  });

  it('leaves out a wood that is not named, and counts many sides in figures', () => {
    const many: Project = { ...project, stock: { ...project.stock, wood: 'other' } };
    expect(pieceSentence({ ...many, piece: { ...many.piece, sides: 24 } })).toMatch(/^24 staves, upright/);
  });
});

describe('why errors show', () => {
  it('counts the faces and names the setting that carries the error', () => {
    const [faces, shared] = whySentences(project);
    expect(faces).toBe('A ring of 12 pieces has 24 sawn faces, and their angles must add up to exactly 360°.');
    expect(shared).toContain('the saw’s tilt is in every one of the 24');
    expect(shared).toContain('a sheet of paper (0.1 mm) under the end of a block 115 mm long, adds up to 1.2°');
    expect(whySentences(mirrorFrameProject())[1]).toContain('the saw’s swing is in every one of the 16');
  });
});

describe('what to expect', () => {
  it('begins with a count', () => {
    expect(chanceSentence(stop)).toBe('83 in 100 rings made this way come out good enough.');
    expect(chanceSentence(resultLike('None', { yield: share(0, 0, 0.0038) }))).toBe(
      'No ring made this way comes out good enough (at most 4 in 1,000).',
    );
  });

  it('says what good enough asks for, and no more', () => {
    expect(expectSentences(project, stop)[0]).toMatch(
      /That means no gap that shows over 0\.15 mm, no hidden one over 0\.40 mm and room for what goes inside\.$/,
    );
    expect(expectSentences(planterProject(), stop)[0]).not.toContain('room for');
    expect(expectSentences(mirrorFrameProject(), stop)[0]).not.toContain('hidden');
  });

  it('tells no width of a gap that is none, nor of one that never closes', () => {
    const tight = resultLike('Tight', { showGapMm: { mean: 0, sd: 0, p50: 0.002, p90: 0.01, p95: 0.02, p99: 0.03 } });
    expect(expectSentences(project, tight)[1]).toMatch(/^In the middle one of such rings no gap to speak of shows; 95/);
    const wide = resultLike('Wide', { showGapMm: { mean: 1, sd: 2, p50: 0.5, p90: 3, p95: 5, p99: 9 } });
    expect(expectSentences(project, wide)[1]).toContain('more than 5 of 100 show one over 2 mm');
  });

  it('counts dots as they lie', () => {
    expect(dotsText([0.01, 0.1, 0.15, 0.2], 0.15, 'metric')).toBe('3 of 4 within 0.15 mm');
  });
});

describe('what is done about it', () => {
  const method = project.methods[2]!;

  it('tells what test cuts take out of the shared error', () => {
    const after = resultLike(method.name, { tiltSharedAfterTestDeg: { mean: 0, sd: 0.028 } });
    // Evenly spread within ±0.5°: standard deviation 0.5/√3 = 0.289 (closed form).
    expect(makingSentences(project, method, after)).toContain(
      'Before the piece itself, up to two rounds of test cuts put the saw right: the tilt error that all cuts share ' +
        'goes from typically 0.29° down to 0.028°.',
    );
  });

  it('claims nothing of test cuts that are not made', () => {
    const untested = project.methods[1]!;
    expect(makingSentences(project, untested, stop).join(' ')).not.toContain('test');
  });

  it('does not speak of the tilt where the blade stands square', () => {
    const frame = mirrorFrameProject();
    expect(makingSentences(frame, frame.methods[1]!, stop).join(' ')).not.toContain('tilt');
  });
});

describe('what remains', () => {
  it.each([
    [graded(830, 150, 20), 'Of 100 such rings about 83 are good as they come, 15 can be put right afterwards'],
    [graded(9979, 21, 0), 'Of 1,000 such rings about 998 are good as they come, 2 can be put right afterwards'],
    [graded(1000, 0, 0), 'Of 100 such rings about 100 are good as they come, none can be put right afterwards'],
  ])('is counted out of as many as it takes', (result, start) => {
    expect(remainsSentences(project, result)[0]).toContain(start);
  });

  it('always counts every ring once', () => {
    const some = fc.integer({ min: 0, max: 100_000 });
    fc.assert(
      fc.property(some, some, some, (good, rework, scrap) => {
        fc.pre(good + rework + scrap > 0);
        const [sentence = ''] = remainsSentences(project, graded(good, rework, scrap));
        const figures =
          sentence
            .replace(/\(.*?\)/, '')
            .replaceAll(',', '')
            .match(/\d+|none/g) ?? [];
        const [all, ...parts] = figures.map((text) => (text === 'none' ? 0 : Number(text)));
        expect(parts).toHaveLength(3);
        expect(parts.reduce((sum, part) => sum + part, 0)).toBe(all);
      }),
      { seed: 5 },
    );
  });
});

describe('beside an eye and a season', () => {
  it('the rings under what an eye tells apart are counted', () => {
    // 10,000 gaps spaced evenly: 0.07 mm in the middle, 0.165 at 95 of 100; 0.1164 lies at 50 + 45 · 0.0464/0.095 = 72.
    expect(eyeSentences(project, stop).join(' ')).toContain('72 in 100 rings stay under that everywhere.');
  });

  it('an inch is said in inches', () => {
    const inches: Project = { ...project, display: 'inch' };
    const said = [pieceSentence(inches), ...whySentences(inches), ...eyeSentences(inches, stop)].join(' ');
    expect(said).not.toMatch(/\d mm/);
  });

  it('both ways of sawing are told, or the one of a sheet', () => {
    expect(seasonGapSentences(project, stop)[0]).toMatch(
      /\(flatsawn boards\) or by up to .* \(quartersawn boards\)\.$/,
    );
    const ply: Project = { ...project, stock: { ...project.stock, wood: 'plywood' } };
    expect(seasonGapSentences(ply, stop)[0]).not.toContain('boards');
    const unknown: Project = { ...project, stock: { ...project.stock, wood: 'bog wood' } };
    expect(seasonGapSentences(unknown, stop)[0]).toContain('each joint of the ring, were it free');
  });
});

describe('the sheet', () => {
  it('is about the method chosen, else about the best', () => {
    const best = resultLike('Best', { yield: share(0.9, 0.89, 0.91) });
    expect(explainedResult(project, [stop, best])).toBe(best);
    expect(explainedResult({ ...project, explain: { method: 'Fixed stop' } }, [stop, best])).toBe(stop);
    expect(explainedResult(project, [])).toBeUndefined();
  });

  it('takes closing words by paragraphs', () => {
    expect(closingParagraphs({ ...project, explain: { closing: ' One.\nStill one.\n \n\nTwo. ' } })).toEqual([
      'One.\nStill one.',
      'Two.',
    ]);
    expect(closingParagraphs(project)).toEqual([]);
  });

  it('says rings, seed and version', () => {
    expect(basisSentence(project, stop)).toContain(`Ringtrue ${PROGRAM_VERSION} from 10,000 simulated rings, seed 7`);
    expect(PROGRAM_VERSION).toBe(packageFile.version);
  });
});
