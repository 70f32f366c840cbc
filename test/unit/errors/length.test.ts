/** What fixes the width of the staves: which staves, which sign, what is shared. */
import { describe, expect, test } from 'vitest';
import { activeSources } from '../../../sim/errors/sources';
import { RADIANS_PER_DEGREE } from '../../../sim/geometry/ring';
import { ALL, draw, flip, onFaces, swap } from '../../support/draws';

describe('the width', () => {
  test.each(['markedLine', 'fixedStop'] as const)('of all staves shares where the %s was put', (by) => {
    expect(flip({ width: { by, sharedMm: 0.3 } }).draws).toEqual([
      draw('widthShared', 'shared', onFaces(['width'], ALL, 0.3)),
    ]);
  });

  test('marked for each stave is drawn for each stave', () => {
    expect(swap({ width: { by: 'markedEach', sharedMm: 0.3 } }).draws).toEqual(
      ALL.map((stave) => draw('widthShared', 'perCut', onFaces(['width'], [stave], 0.3))),
    );
  });

  test('varies from stave to stave', () => {
    expect(swap({ width: { by: 'markedLine', perCutMm: 0.2 } }).draws).toEqual(
      ALL.map((stave) => draw('widthPerCut', 'perCut', onFaces(['width'], [stave], 0.2))),
    );
  });

  test('drifts with a stop: each step stays in all staves that follow', () => {
    const { draws, offsets } = flip({ width: { by: 'fixedStop', driftMeanMm: 0.01, driftSigmaMm: 0.02 } });
    expect(draws).toEqual(ALL.map((stave) => draw('drift', 'perCut', onFaces(['width'], ALL.slice(stave), 0.02))));
    const total = (stave: number) => offsets.reduce((sum, { faces }) => sum + (faces[`width ${stave}`] ?? 0), 0);
    expect(total(0)).toBeCloseTo(0.01, 12);
    expect(total(7)).toBeCloseTo(0.08, 12);
  });

  test('is short where a chip lies against the stop', () => {
    const { list } = flip({ width: { by: 'fixedStop', chipChance: 0.02, chipMeanMm: 0.3 } });
    expect(list.rare).toEqual(
      ALL.map((stave) => ({ source: 'chips', chance: 0.02, mean: 0.3, index: [stave * 5 + 4], weight: [-1] })),
    );
    expect([...activeSources(list)]).toEqual(['chips']);
  });

  test('neither drifts nor meets chips without a stop', () => {
    const wear = { driftMeanMm: 0.01, driftSigmaMm: 0.02, chipChance: 0.02, chipMeanMm: 0.3 };
    for (const by of ['markedLine', 'markedEach'] as const) {
      const { list } = swap({ width: { by, ...wear } });
      expect([list.draws, list.offsets, list.rare]).toEqual([[], [], []]);
    }
  });

  test('follows the thickness only wide face up against a stop: by the tangent of the tilt', () => {
    const stock = { thicknessSigmaMm: 0.1 };
    const up = { wideFace: 'up', width: { by: 'fixedStop' } } as const;
    const perStave = 0.1 * Math.tan(22.5 * RADIANS_PER_DEGREE);
    expect(flip(up, { stock }).draws).toEqual(
      ALL.map((stave) => draw('thickness', 'perCut', onFaces(['width'], [stave], perStave))),
    );
    expect(flip({ ...up, wideFace: 'down' }, { stock }).draws).toEqual([]);
    expect(flip({ ...up, width: { by: 'markedLine' } }, { stock }).draws).toEqual([]);
    expect(flip({ ...up, width: { by: 'markedEach' } }, { stock }).draws).toEqual([]);
  });
});
