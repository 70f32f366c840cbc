/** What the blade's tilt does to the faces: which ones, which sign, what is shared and what is not. */
import { describe, expect, test } from 'vitest';
import { activeSources } from '../../../sim/errors/sources';
import { ALL, BEVELS, byCut, byFace, draw, flip, onFaces, swap } from '../../support/draws';

describe('tilt', () => {
  test('shared is one draw on all bevels, and on the tilt setting itself', () => {
    const faces = { ...onFaces(BEVELS, ALL, 0.1), tilt: 0.1 };
    for (const { draws } of [flip({ tilt: { sharedDeg: 0.1 } }), swap({ tilt: { sharedDeg: 0.1 } })]) {
      expect(draws).toEqual([draw('tiltShared', 'shared', faces)]);
    }
  });

  test('shared may be uniform, with its half-width as the weight', () => {
    const { draws } = flip({ tilt: { sharedDeg: 0.25, shape: 'uniform' } });
    expect(draws).toEqual([draw('tiltShared', 'shared', { ...onFaces(BEVELS, ALL, 0.25), tilt: 0.25 }, 'uniform')]);
  });

  test('set anew for every cut is one draw a cut, and no longer the tilt setting', () => {
    const tilt = { sharedDeg: 0.1, reset: 'everyCut' } as const;
    expect(flip({ tilt }).draws).toEqual(byCut('bevel', () => 0.1).map((faces) => draw('tiltShared', 'perCut', faces)));
    expect(swap({ tilt: { ...tilt, shape: 'uniform' } }).draws).toEqual(
      byFace('bevel', 0.1).map((faces) => draw('tiltShared', 'perCut', faces, 'uniform')),
    );
  });

  test('bias is known and belongs to the shared tilt; aim is deliberate and belongs to no source', () => {
    const { draws, offsets, list } = flip({ tilt: { biasDeg: 0.05, aimDeg: -0.02, reset: 'everyCut' } });
    expect(draws).toEqual([]);
    expect(offsets).toEqual([
      { source: 'aim', stage: 'shared', faces: onFaces(BEVELS, ALL, -0.02) },
      { source: 'tiltShared', stage: 'shared', faces: { ...onFaces(BEVELS, ALL, 0.05), tilt: 0.05 } },
    ]);
    expect([...activeSources(list)]).toEqual(['tiltShared']);
  });

  test('from side to side is one draw when the face is turned over and one for each side when sides are swapped', () => {
    expect(flip({ tilt: { sideDeg: 0.02 } }).draws).toEqual([draw('tiltSide', 'shared', onFaces(BEVELS, ALL, 0.02))]);
    expect(swap({ tilt: { sideDeg: 0.02 } }).draws).toEqual([
      draw('tiltSide', 'shared', onFaces(['bevelRight'], ALL, 0.02)),
      draw('tiltSide', 'shared', onFaces(['bevelLeft'], ALL, 0.02)),
    ]);
  });

  test('from cut to cut is the same on both faces of a kerf, and anew on every face when sides are swapped', () => {
    expect(flip({ tilt: { perCutDeg: 0.03 } }).draws).toEqual(
      byCut('bevel', () => 0.03).map((faces) => draw('tiltPerCut', 'perCut', faces)),
    );
    expect(swap({ tilt: { perCutDeg: 0.03 } }).draws).toEqual(
      byFace('bevel', 0.03).map((faces) => draw('tiltPerCut', 'perCut', faces)),
    );
  });
});
