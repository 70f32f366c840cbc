/** What is said where no aim and no accuracy that a workshop can have would do. */
import { describe, expect, test } from 'vitest';
import type { AccuracyNeeded, SourceNeeded } from '../../../sim/decide/accuracy-needed';
import type { BestAim } from '../../../sim/decide/aim';
import { accuracySentences, accuracyTable } from '../../../sim/wording/accuracy';
import { aimTable, aimTexts } from '../../../sim/wording/aim';
import { projectWith } from '../../support/projects';
import { share } from './result-like';

const project = projectWith({});
const [method] = project.methods;

describe('the aim', () => {
  const aims = Array.from({ length: 27 }, (_, k) => (k - 13) / 10);
  const best = (good: number): BestAim => ({
    trials: 10_000,
    aimDeg: 0,
    alikeDeg: { from: 0, to: 0 },
    yield: share(good, good / 2, good + 0.0004),
    gain: { value: 0, low: 0, high: 0 },
    curve: aims.map((aimDeg) => ({ aimDeg, yield: share(aimDeg === 0 ? good : 0, 0, 0.002) })),
  });

  test('is one sentence where none gives a good piece, or hardly any', () => {
    expect(aimTexts(best(0), project, method!)).toEqual([
      '“Only”: no aim gives a good piece: make the method better or the limits wider first.',
    ]);
    expect(aimTexts(best(0.004), project, method!)).toEqual([
      '“Only”: no aim helps, about 4 in 1,000 (2 to 4) pieces come out good at best: make the method better or the limits wider first.',
    ]);
    expect(aimTable(best(0)).rows).toHaveLength(1);
  });

  test('is not counted in a sentence that cannot hold it', () => {
    const [said] = aimTexts(best(0.015), project, method!);
    expect(said).toMatch(
      /^“Only”: leave the tilt at 22\.5°: about 15 in 1,000 \(.*\) pieces come out good, and no aim does better/,
    );
  });
});

describe('the accuracy needed', () => {
  const source = (
    name: SourceNeeded['source'],
    key: SourceNeeded['figures'][0]['key'],
    now: number,
    factor: number,
  ): SourceNeeded => ({
    source: name,
    factor,
    figures: [{ key, now, needed: now * factor }],
    yieldIfPerfect: 0.96,
  });
  const needed = (factor: number, together: number): AccuracyNeeded => {
    const width = source('widthShared', 'width.sharedMm', 0.3, factor);
    return {
      trials: 6000,
      wanted: 0.95,
      yieldNow: 0.1,
      sources: [width],
      inTheWay: [],
      balanced: [
        {
          source: 'widthShared',
          factor: together,
          figures: source('widthShared', 'width.sharedMm', 0.3, together).figures,
        },
      ],
    };
  };

  test('is out of reach where nothing can be set so finely, and what to change is said', () => {
    // 0.3 mm · 0.000263 = 0.000079 mm
    const hopeless = needed(0.000263, 0.000263);
    const said = accuracySentences(method!, hopeless, 'metric').join(' ');
    expect(said).not.toContain('0.000079');
    expect(said).toMatch(
      /out of reach: .* would have to be finer than a workshop can set or measure\. Change the method/,
    );
    const { rows } = accuracyTable('Only', hopeless, 'metric');
    expect([rows[0]?.[3], rows[0]?.[4]]).toEqual(['out of reach', 'out of reach']);
    expect(JSON.stringify(accuracyTable('Only', hopeless, 'inch'))).not.toContain('0.000003');
  });

  test('is a figure where it can be had', () => {
    const said = accuracySentences(method!, needed(0.5, 0.4), 'metric').join(' ');
    expect(said).toMatch(/One alone would do it: .* at 0\.15 mm in place of 0\.3 mm\./);
    expect(said).not.toContain('reach');
    expect(accuracyTable('Only', needed(0.5, 0.4), 'metric').rows[0]?.[4]).toBe('0.12 mm');
  });
});
