import { describe, expect, it } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import type { SingleRing } from '../../../sim/run/single-ring';
import {
  betweenText,
  closingSentence,
  jointsSentence,
  jointTable,
  openingsText,
  ringSentence,
  touchSentence,
  widestJoint,
  withoutName,
} from '../../../sim/wording/joints';

const RING: SingleRing = {
  ring: 1233,
  closes: true,
  mouthOuterMm: 2,
  mouthInnerMm: 1,
  joints: [
    { outerMm: 0.004, innerMm: 0 },
    { outerMm: 0.08, innerMm: 0.002 },
    { outerMm: 0.02, innerMm: 0.3 },
  ],
};
const ASSEMBLY = exampleProject().methods[0]!.assembly;

describe('one ring', () => {
  it('is told by its widest gap on the side that shows, counting rings and joints from 1', () => {
    expect(ringSentence(RING, 'outside', 'metric')).toBe(
      'Ring 1,234 shows its widest gap at joint 2: 0.08 mm outside.',
    );
    expect(ringSentence(RING, 'inside', 'metric')).toBe('Ring 1,234 shows its widest gap at joint 3: 0.30 mm inside.');
    expect(ringSentence(RING, 'both', 'inch')).toBe(
      'Ring 1,234 shows its widest gap at joint 3: 0.012 in on one side or the other.',
    );
    expect([widestJoint(RING.joints, 'outside'), widestJoint(RING.joints, 'both')]).toEqual([1, 2]);
  });

  it('that does not close is said to, without a width', () => {
    expect(ringSentence({ ...RING, closes: false }, 'outside', 'metric')).toBe(
      'Ring 1,234 will not close: pulled up, a joint would still stand open, or a stave stand proud, by more than 2 mm.',
    );
  });

  it('without any gap is tight', () => {
    const tight = { ...RING, joints: RING.joints.map(() => ({ outerMm: 0, innerMm: 0.001 })) };
    expect(ringSentence(tight, 'outside', 'metric')).toBe('Ring 1,234: every joint is tight outside.');
    expect(ringSentence(tight, 'both', 'metric')).toBe('Ring 1,234: every joint is tight on both sides.');
  });
});

describe('one joint', () => {
  it('stands open, touches or is tight', () => {
    expect(RING.joints.map((joint) => openingsText(joint, 'metric'))).toEqual([
      'tight on both sides',
      'open 0.08 mm outside, touching inside',
      'open 0.02 mm outside, open 0.30 mm inside',
    ]);
  });

  it('lies between two staves, the last between the last and the first', () => {
    expect([betweenText(0, 3), betweenText(2, 3)]).toEqual(['between staves 1 and 2', 'between staves 3 and 1']);
  });
});

describe('the joints over all rings', () => {
  it('fare alike when they differ by little', () => {
    expect(jointsSentence([0.1, 0.104, 0.108], 'metric')).toBe(
      'All joints fare alike: at each, 95 of 100 rings stay under 0.10 mm to 0.11 mm.',
    );
  });

  it('are told by the widest and the tightest otherwise, and never by a width over 2 mm', () => {
    expect(jointsSentence([0.1, 0.3, 0.2], 'metric')).toBe(
      'Joint 2 gapes most: 95 of 100 rings stay under 0.30 mm there; joint 1 least: 0.10 mm.',
    );
    expect(jointsSentence([0.1, 2.6, 0.2], 'metric')).toBe(
      'Joint 2 gapes most: more than 5 of 100 rings gape over 2 mm there; joint 1 least: 0.10 mm.',
    );
    expect(jointsSentence([0, 0.001], 'metric')).toBe('At every joint 95 of 100 rings are tight.');
  });

  it('are closed last where the assembly says so', () => {
    expect(closingSentence(ASSEMBLY, 12)).toContain('All 12 joints are closed at once');
    expect(closingSentence({ ...ASSEMBLY, by: 'oneByOne', freeJoints: 3 }, 12)).toContain('joints 10, 11 and 12');
    expect(closingSentence({ ...ASSEMBLY, by: 'oneByOne', freeJoints: 8 }, 12)).toContain('joints 5 to 12');
    expect(closingSentence({ ...ASSEMBLY, by: 'twoHalves' }, 12)).toContain('joints 6 and 12');
  });

  it('make a table with the ring looked at beside them, while it closes', () => {
    const table = jointTable([0.1, 0.2, 2.5], RING, 'metric');
    expect(table.head).toHaveLength(5);
    expect(table.rows.every((row) => row.length === table.head.length)).toBe(true);
    expect(table.rows[1]).toEqual(['2', '2 and 3', '0.08 mm', 'touches', '0.20 mm']);
    expect(table.rows[2]?.[4]).toBe('over 2 mm');
    expect(jointTable([0.1, 0.2, 0.3], { ...RING, closes: false }, 'metric').head).toHaveLength(3);
  });
});

describe('touch against contact', () => {
  const excess = { trials: 1000, excessMm: new Float64Array(), meanMm: 0.0123, p95Mm: 0.034 };

  it('tells how much too wide the quick rule makes the gap', () => {
    expect(touchSentence(excess, 'metric')).toBe(
      'Touch, the quick rule, would make the widest gap 0.012 mm too wide on average, and at least 0.034 mm too wide in 5 of 100 (on the same 1,000 rings).',
    );
    expect(touchSentence({ ...excess, meanMm: 0.0003 }, 'metric')).toContain(
      'no wider on average, but at least 0.034 mm',
    );
  });

  it('says when there is nothing between them, or no choice', () => {
    expect(touchSentence({ ...excess, meanMm: 0, p95Mm: 0 }, 'metric')).toContain('agrees with contact');
    expect(touchSentence(null, 'metric')).toContain('always worked out by contact');
  });
});

it('a sentence does without its method’s name where the page is about that method', () => {
  expect(withoutName('“Stop”: leave it.', 'Stop')).toBe('Leave it.');
  expect(withoutName('“Other”: leave it.', 'Stop')).toBe('“Other”: leave it.');
});
