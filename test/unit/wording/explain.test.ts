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
  pieceSentence,
  remainsSentences,
  seasonGapSentences,
} from '../../../sim/wording/explain';
import { makingSentences } from '../../../sim/wording/making';
import { whySentences } from '../../../sim/wording/why';
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
      'Twelve pieces of oak, standing upright: 280 mm across, 140 mm high and 15 mm thick. ' +
        'The opening is 250 mm across, for something 236 mm wide.',
    );
    expect(pieceSentence(planterProject())).toMatch(
      /^Six pieces of walnut, leaning 15° from upright: \d+ mm across, 180 mm along the slope/,
    );
  });

  it('is a frame by its opening and the width of its members', () => {
    // A hexagon of side 300 lies 300·√3 = 519.62 across; two members of 60 leave 399.62 (closed form).
    const frame = mirrorFrameProject();
    const { insert: _, ...piece } = frame.piece;
    const size = { by: 'staveWidth', mm: 300 } as const;
    expect(pieceSentence({ ...frame, piece: { ...piece, sides: 6, size } })).toBe(
      'Six pieces of cherry, laid flat as a frame with an opening 400 mm across; the wood is 60 mm wide and 20 mm thick.',
    );
  });

  it('leaves out a wood that is not named, and counts many sides in figures', () => {
    const many: Project = { ...project, stock: { ...project.stock, wood: 'other' } };
    expect(pieceSentence({ ...many, piece: { ...many.piece, sides: 24 } })).toMatch(/^24 pieces, standing upright/);
  });
});

describe('what to expect', () => {
  it('begins with a count', () => {
    expect(chanceSentence(project, stop)).toBe('About 83 of 100 rings made this way come out good enough.');
    expect(chanceSentence(mirrorFrameProject(), resultLike('None', { yield: share(0, 0, 0.0038) }))).toBe(
      'None of the frames made this way come out good enough.',
    );
    expect(chanceSentence(project, resultLike('Rare', { yield: share(0.998) }))).toMatch(/^About 99\.8 of 100 rings/);
  });

  it('says what good enough asks for, and no more', () => {
    const said = (of: Project) => expectSentences(of, stop, [stop])[0];
    expect(said(project)).toMatch(
      /That means no gap that shows over 0\.15 mm, no hidden gap over 0\.4 mm and room for what goes inside\.$/,
    );
    expect(said(planterProject())).not.toContain('room for');
    expect(said(mirrorFrameProject())).not.toContain('hidden');
  });

  it('tells no width of a gap that is none, nor of one that never closes', () => {
    const said = (result: MethodResult) => expectSentences(project, result, [result])[1];
    const tight = resultLike('Tight', { showGapMm: { mean: 0, sd: 0, p50: 0.002, p90: 0.01, p95: 0.02, p99: 0.03 } });
    expect(said(tight)).toBe('Half of them show no gap to speak of; in 95 of 100 the widest gap is under 0.02 mm.');
    const wide = resultLike('Wide', { showGapMm: { mean: 1, sd: 2, p50: 0.5, p90: 3, p95: 5, p99: 9 } });
    expect(said(wide)).toContain('in more than 5 of 100 it is over 2 mm');
  });

  it('owns up where most fail, and names a way that does better if there is one', () => {
    const bad = resultLike('Bad', { yield: share(0.2) });
    const said = (results: MethodResult[]) => expectSentences(project, bad, results).at(-1);
    expect(said([bad, stop])).toBe(
      'More fail than succeed this way. Made another way, “Fixed stop”, about 83 of 100 pieces come out good enough.',
    );
    expect(said([bad])).toMatch(/^None of the ways worked out here does clearly better/);
    expect(expectSentences(project, stop, [stop, bad])).toHaveLength(2);
  });

  it('counts dots as they lie', () => {
    expect(dotsText([0.01, 0.1, 0.15, 0.2], 0.15, 'metric')).toBe('3 of 4 within 0.15 mm');
  });
});

describe('what remains', () => {
  it.each([
    [graded(830, 150, 20), 'Of 100 such rings about 83 are good enough as glued, 15 can be put right afterwards'],
    [graded(9979, 21, 0), 'Of 1,000 such rings about 998 are good enough as glued, 2 can be put right afterwards'],
    [graded(1000, 0, 0), 'Of 100 such rings about 100 are good enough as glued, none can be put right afterwards'],
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
    expect(eyeSentences(project, stop).join(' ')).toContain('About 72 of 100 rings stay under that at every joint.');
  });

  it('an inch is said in inches', () => {
    const inches: Project = { ...project, display: 'inch' };
    const said = [pieceSentence(inches), ...eyeSentences(inches, stop)].join(' ');
    expect(said).not.toMatch(/\d mm/);
  });

  it('both ways of sawing are told, or the one width where there is but one', () => {
    const said = (of: Project) => seasonGapSentences(of).join(' ');
    expect(said(project)).toMatch(
      /by up to 0\.\d+ mm or 0\.\d+ mm, depending on how the boards were sawn from the log\./,
    );
    const ply: Project = { ...project, stock: { ...project.stock, wood: 'plywood' } };
    expect(said(ply)).not.toContain('boards');
    // Turned by 90°, flatsawn and quartersawn staves move each other's way and by as much.
    const up: Project = { ...project, piece: { ...project.piece, grain: 'upStave' } };
    expect(said(up)).toMatch(/would open by up to 0\.\d+ mm\./);
    expect(said({ ...project, stock: { ...project.stock, wood: 'bog wood' } })).toContain(
      'How much bog wood moves is not',
    );
  });

  it('a season that moves the joints more than the limit is owned up to, with what follows', () => {
    const frame = mirrorFrameProject();
    expect(seasonGapSentences(frame).join(' ')).toContain(
      'more than the 0.12 mm allowed: a hairline may open and close again with the seasons',
    );
    expect(seasonGapSentences(project).join(' ')).toContain('That is within the 0.15 mm allowed.');
  });

  it('the air that is reckoned with is told', () => {
    expect(seasonGapSentences(project)[0]).toContain('35 % and 65 % humidity');
    expect(seasonGapSentences(project).at(-1)).toContain('Out of doors');
  });

  it('no word of the trade is left without its meaning', () => {
    const sheets = [project, planterProject(), mirrorFrameProject()].flatMap((of) => [
      pieceSentence(of),
      ...expectSentences(of, stop, [stop]),
      ...eyeSentences(of, stop),
      ...seasonGapSentences(of),
      ...remainsSentences(of, stop),
      ...of.methods.flatMap((method) => [...makingSentences(of, method, stop), ...whySentences(of, method, null)]),
    ]);
    expect(sheets.join(' ')).not.toMatch(/fence|mouth|minute|flatsawn|quartersawn|stave|mitre|kerf|sled|gauge/i);
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
