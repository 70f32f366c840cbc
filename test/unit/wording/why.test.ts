import { describe, expect, it } from 'vitest';
import type { SourceBudget } from '../../../sim/budget/budget';
import type { Method, Project } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject, planterProject } from '../../../sim/project/example';
import { SOURCE_NAMES, type SourceName } from '../../../sim/project/source-names';
import { PLAIN_CAUSES } from '../../../sim/wording/plain-causes';
import { whySentences } from '../../../sim/wording/why';
import { answerTo } from '../../support/answer-to';

const project = exampleProject();
const [, stop, , oneByOne] = project.methods as [Method, Method, Method, Method];

function budgetOf(source: SourceName, withoutMm = 0.05, nowMm = 0.2): SourceBudget {
  const value = withoutMm - nowMm;
  const showGapP95ChangeMm = { value, low: value - 0.001, high: value + 0.001 };
  const effect = { source, varianceShare: 0.01, showGapP95WithoutMm: withoutMm, showGapP95ChangeMm };
  return { trials: 20_000, showGapP95Mm: nowMm, sources: [effect] };
}

const why = (of: Project, method: Method, budget: SourceBudget | null): string =>
  whySentences(of, method, budget).join(' ');

describe('why a ring shows small errors', () => {
  it('the sawn angles add up to a full turn, but of leaning pieces only the turns seen from above', () => {
    expect(whySentences(project, stop, null)[0]).toBe(
      'A ring of 12 pieces has 24 sawn faces, and their angles must add up to exactly 360°.',
    );
    const leaning = whySentences(planterProject(), stop, null)[0] ?? '';
    expect(leaning).toContain('seen from above, the turns at the 6 corners must add up to exactly 360°');
    expect(leaning).not.toContain('their angles must add up');
    expect(whySentences(mirrorFrameProject(), stop, null)[0]).toContain('A frame of 8 pieces has 16 sawn faces');
  });

  it('names the cause that the budget of this ring names, whatever it is', () => {
    for (const source of SOURCE_NAMES) {
      expect(why(project, stop, budgetOf(source))).toContain(
        `Most of the gap comes from ${PLAIN_CAUSES[source].what}.`,
      );
    }
    expect(why(project, stop, budgetOf('bulge', 0.15))).toContain('The largest single cause of the gap is sawn faces');
    expect(why(project, stop, { ...budgetOf('bulge'), sources: [] })).toContain('No error is expected');
    expect(why(project, stop, budgetOf('bulge', 0.1999))).toContain('No single cause stands out');
  });

  it('finds the cause that was put in: with nothing but snags, it is the snags', async () => {
    const blade = {
      ...stop.blade,
      forceSigmaN: 0,
      forceWithinCutN: 0,
      kerfSigmaMm: 0,
      snagChance: 0.2,
      recutAboveMm: null,
    };
    const tilt = { ...stop.tilt, sharedDeg: 0, sideDeg: 0, perCutDeg: 0 };
    const only = { ...project, methods: [{ ...stop, tilt, blade }] };
    const { budget } = await answerTo(only, 0, { kind: 'budget', rings: 4000 });
    expect(why(only, only.methods[0]!, budget)).toContain('a saw blade that catches in the wood');
  });

  it('shows by a sheet of paper only what is in every face alike', () => {
    // 0.1/tan 0.05° = 114.6; twelve sides: a mouth of 2N·δ·R/cos 15° = 24·0.000873·140/0.966 = 3.04 (model of small angles).
    expect(why(project, stop, budgetOf('tiltShared'))).toContain(
      'is in all 24 faces and adds up: 0.05°, as little as a sheet of paper (0.1 mm) under the end of a block 115 mm long, ' +
        'leaves the last joint 3.0 mm open',
    );
    const anew = { ...stop, tilt: { ...stop.tilt, reset: 'everyCut' as const } };
    for (const said of [why(project, stop, budgetOf('bulge')), why(project, anew, budgetOf('tiltShared'))]) {
      expect(said).not.toContain('paper');
    }
  });

  it('says where what is left goes, the way the ring is glued', () => {
    expect(why(project, stop, budgetOf('tiltShared'))).toMatch(/all 12 joints share what is left: 0\.0\d+ mm each\./);
    const said = why(project, oneByOne, budgetOf('tiltShared'));
    expect(said).toMatch(
      /only the last three joints can still give, and they take all that is left: up to 1\.\d+ mm\./,
    );
    expect(said).not.toContain('share');
    const halves = { ...stop, assembly: { ...stop.assembly, by: 'twoHalves' as const } };
    const planed = why(project, halves, budgetOf('truing'));
    expect(planed).toContain('ends planed flat');
    expect(planed).not.toMatch(/share|paper/);
  });

  it('shows as many digits as tell two widths apart', () => {
    expect(why(project, stop, budgetOf('bulge', 0.051, 0.054))).toContain('no gap over 0.051 mm, in place of 0.054 mm');
  });
});
