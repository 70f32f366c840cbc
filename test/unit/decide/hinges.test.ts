/** What a lead hinges on, by hand where one error alone decides. */
import { describe, expect, test } from 'vitest';
import { MOST_WORSE } from '../../../sim/decide/hinges';
import type { Project } from '../../../sim/project/document';
import { hingeSentence } from '../../../sim/wording/hinges';
import { answerTo } from '../../support/answer-to';
import { projectWith } from '../../support/projects';

/** Upright staves with nothing wrong but the tilt setting, of each method its own. */
function twoTilts(leaderDeg: number, rivalDeg: number): Project {
  const project = projectWith({
    limits: { showGapMm: 0.1 },
    run: { rule: 'touch', seed: 5 },
    method: { tilt: { sharedDeg: leaderDeg }, assembly: { ends: 'flush' } },
  });
  const [method] = project.methods;
  return {
    ...project,
    methods: [method!, { ...method!, name: 'Quick', tilt: { ...method!.tilt, sharedDeg: rivalDeg } }],
  };
}

describe('where the tilt setting alone decides', () => {
  test('the lead is lost where both settings are equally good', async () => {
    const { leads, hinges } = await answerTo(twoTilts(0.05, 0.15), 0, { kind: 'hinges', rival: 1 });
    expect(leads).toBe(true);
    expect(hinges).toHaveLength(1);
    expect(hinges[0]).toMatchObject({ source: 'tiltShared', key: 'tilt.sharedDeg', now: 0.05 });
    // Nine halvings of the search leave half a percent of the factor three.
    expect(hinges[0]!.lostAt / 0.15).toBeCloseTo(1, 2);
  });

  test('a setting many times better loses the lead to nothing by itself', async () => {
    const found = await answerTo(twoTilts(0.01, 0.1 + 0.01 * MOST_WORSE), 0, { kind: 'hinges', rival: 1 });
    expect(found).toMatchObject({ leads: true, hinges: [] });
    expect(hingeSentence('Careful', 'Quick', found, 'metric')).toBe(
      '“Careful” stays ahead of “Quick” even with any one of its errors 8 times as large.',
    );
  });

  test('two that are the same are not told apart', async () => {
    const found = await answerTo(twoTilts(0.1, 0.1), 0, { kind: 'hinges', rival: 1 });
    expect(found).toMatchObject({ leads: false, hinges: [] });
    expect(hingeSentence('Careful', 'Quick', found, 'metric')).toBe(
      'Which of “Careful” and “Quick” gives more good pieces, 6,000 rings each cannot tell.',
    );
  });
});

test('stock that is not true troubles the rival alike, so that the lead does not hinge on it', async () => {
  const project = twoTilts(0.05, 0.1);
  project.stock = { ...project.stock, edgeTaperDeg: 0.05 };
  const { hinges } = await answerTo(project, 0, { kind: 'hinges', rival: 1 });
  expect(hinges.map(({ source }) => source)).toEqual(['tiltShared']);
});

test('the sentence names the figure, where the lead is lost and where it is now, in either unit', async () => {
  const found = await answerTo(twoTilts(0.05, 0.15), 0, { kind: 'hinges', rival: 1 });
  expect(hingeSentence('Careful', 'Quick', found, 'metric')).toBe(
    '“Careful” stays ahead of “Quick” as long as its shared tilt error stays under 0.15° (now 0.05°), the rest as it is.',
  );
  const width = {
    ...found,
    hinges: [{ source: 'widthShared', key: 'width.sharedMm', now: 0.254, lostAt: 0.508 }] as const,
  };
  expect(hingeSentence('Careful', 'Quick', { ...width, hinges: [...width.hinges] }, 'inch')).toContain(
    '0.02 in (now 0.01 in)',
  );
});
