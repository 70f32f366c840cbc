/** All sources together, none of them, and each counted as perfect. */
import { describe, expect, test } from 'vitest';
import { activeSources, drawList, methodCuts } from '../../../sim/errors/sources';
import { ringGeometry } from '../../../sim/geometry/ring';
import { SOURCE_NAMES } from '../../../sim/project/document';
import { flip, SPLAYED, swap } from '../../support/draws';
import { type MethodChanges, projectWith } from '../../support/projects';

describe('nothing wrong', () => {
  test('means nothing to draw', () => {
    for (const { list } of [flip({}), swap({})]) {
      expect([list.draws, list.offsets, list.rare]).toEqual([[], [], []]);
      expect([list.bulgeMm, list.snag.chance, list.truingMm]).toEqual([0, 0, 0]);
      expect(activeSources(list).size).toBe(0);
    }
  });
});

describe('a source counted as perfect', () => {
  const everything: MethodChanges = {
    sequence: 'swapSides',
    wideFace: 'up',
    tilt: { biasDeg: 0.01, sharedDeg: 0.1, sideDeg: 0.02, perCutDeg: 0.03, aimDeg: 0.01 },
    guide: { zeroDeg: 0.1, settingDeg: 0.1, slotDeg: 0.05, seatMm: 0.05 },
    width: {
      by: 'fixedStop',
      sharedMm: 0.3,
      perCutMm: 0.2,
      driftMeanMm: 0.01,
      driftSigmaMm: 0.02,
      chipChance: 0.02,
      chipMeanMm: 0.3,
    },
    blade: { kerfSigmaMm: 0.03, forceMeanN: 1, forceSigmaN: 2, forceWithinCutN: 1, snagChance: 0.01 },
    assembly: { by: 'twoHalves', truingMm: 0.03 },
  };
  const project = projectWith({
    piece: SPLAYED,
    stock: { thicknessSigmaMm: 0.1, cupMm: 0.05, edgeTaperDeg: 0.01 },
    method: everything,
  });

  test('is gone, and every other stays', () => {
    const geometry = ringGeometry(project.piece);
    const [method] = project.methods;
    const cuts = methodCuts(project, method!, geometry);
    const all = drawList(project, method!, geometry, cuts);
    expect([...activeSources(all)].sort()).toEqual([...SOURCE_NAMES].sort());
    for (const source of SOURCE_NAMES) {
      const list = drawList(project, method!, geometry, cuts, new Set([source]));
      const left = SOURCE_NAMES.filter((name) => name !== source);
      expect([...activeSources(list)].sort(), source).toEqual([...left].sort());
      expect(list.draws).toEqual(all.draws.filter((entry) => entry.source !== source));
      expect(list.offsets.some((entry) => entry.source === 'aim')).toBe(true);
    }
  });
});
