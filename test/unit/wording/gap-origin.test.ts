import { describe, expect, it } from 'vitest';
import type { SourceBudget, SourceEffect } from '../../../sim/budget/budget';
import { SOURCE_NAMES, type SourceName } from '../../../sim/project/document';
import { gapNowSentence, gapOriginSentence, tellingSources } from '../../../sim/wording/gap-origin';
import { SOURCE_WORDS } from '../../../sim/wording/sources';

const NOW_MM = 0.2;

function effect(source: SourceName, withoutMm: number, uncertaintyMm = 0.001): SourceEffect {
  const value = withoutMm - NOW_MM;
  return {
    source,
    varianceShare: 0.5,
    showGapP95WithoutMm: withoutMm,
    showGapP95ChangeMm: { value, low: value - uncertaintyMm, high: value + uncertaintyMm },
  };
}

const budget = (...sources: SourceEffect[]): SourceBudget => ({ trials: 20_000, showGapP95Mm: NOW_MM, sources });

describe('where the gap comes from', () => {
  it('is mostly the source that takes at least half of it away', () => {
    const found = budget(effect('kerf', 0.19), effect('tiltShared', 0.05));
    expect(gapOriginSentence(found, 'metric')).toBe(
      'Mostly from the tilt setting: were that perfect, 95 of 100 pieces would show no gap over 0.05 mm.',
    );
    expect(gapNowSentence(found, 'metric')).toBe('As things are, 95 of 100 pieces show no gap over 0.20 mm.');
  });

  it('is first of all the strongest of several, and one close behind it is named', () => {
    const found = budget(effect('tiltShared', 0.14), effect('bulge', 0.13), effect('kerf', 0.199));
    expect(gapOriginSentence(found, 'metric')).toBe(
      'First of all from faces that are not flat: were that perfect, 95 of 100 pieces would show no gap over 0.13 mm.',
    );
    expect(gapNowSentence(found, 'metric')).toBe(
      'As things are, 95 of 100 pieces show no gap over 0.20 mm. Nearly as much comes from the tilt setting.',
    );
  });

  it('is told in digits that tell the two gaps apart, the same in both sentences', () => {
    // To hundredths 0.01 and 0; to thousandths 0.006 and 0.003, a difference within 4 % of the true one.
    const found = { ...budget(effect('kerf', 0.004), effect('tiltShared', 0.0033)), showGapP95Mm: 0.0062 };
    expect(gapOriginSentence(found, 'metric')).toContain('no gap over 0.003 mm');
    expect(gapNowSentence(found, 'metric')).toContain('no gap over 0.006 mm');
  });

  it('is no source whose effect is not certain', () => {
    const found = budget(effect('tiltShared', 0.199, 0.01));
    expect(tellingSources(found)).toEqual([]);
    expect(gapOriginSentence(found, 'metric')).toMatch(/^From no single source/);
    expect(gapOriginSentence(budget(), 'metric')).toMatch(/^From nowhere/);
  });

  it('never tells a width over 2 mm', () => {
    const wide: SourceBudget = {
      trials: 1,
      showGapP95Mm: 5,
      sources: [
        {
          source: 'tiltShared',
          varianceShare: 1,
          showGapP95WithoutMm: 3,
          showGapP95ChangeMm: { value: -2, low: -2.1, high: -1.9 },
        },
      ],
    };
    expect(gapOriginSentence(wide, 'metric')).toContain('more than 5 of 100 pieces would still show a gap over 2 mm');
    expect(gapNowSentence(wide, 'inch')).toContain('more than 5 of 100 pieces show a gap over 0.079 in');
  });

  it('can name every source in a sentence', () => {
    const causes = SOURCE_NAMES.map((name) => SOURCE_WORDS[name].cause);
    expect(new Set(causes).size).toBe(SOURCE_NAMES.length);
    for (const cause of causes) expect(cause).toMatch(/^[a-z].*[^.]$/);
  });
});
