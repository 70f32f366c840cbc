/** What carries the work past the blade, and the strip itself: which faces, which sign, what is shared. */
import { describe, expect, test } from 'vitest';
import { pitchMm, RADIANS_PER_DEGREE, ringGeometry } from '../../../sim/geometry/ring';
import { DEFAULT_BLADE } from '../../../sim/project/defaults';
import { ALL, BEVELS, byCut, CROSSCUTS, draw, flip, listed, onFaces, SPLAYED, swap } from '../../support/draws';
import { projectWith } from '../../support/projects';

describe('the guide', () => {
  test('is out of square alike on all faces turned over, but opposite on the two sides when they are swapped', () => {
    expect(flip({ guide: { zeroDeg: 0.1 } }).draws).toEqual([
      draw('guideZero', 'shared', onFaces(CROSSCUTS, ALL, 0.1)),
    ]);
    expect(swap({ guide: { zeroDeg: 0.1 } }).draws).toEqual([
      draw('guideZero', 'shared', {
        ...onFaces(['crosscutRight'], ALL, 0.1),
        ...onFaces(['crosscutLeft'], ALL, -0.1),
      }),
    ]);
  });

  test.each([
    ['guideSetting', { settingDeg: 0.2 }],
    ['guideSlot', { slotDeg: 0.2 }],
  ] as const)('has one %s turned over and two swapped', (source, guide) => {
    expect(flip({ guide }, { piece: SPLAYED }).draws).toEqual([draw(source, 'shared', onFaces(CROSSCUTS, ALL, 0.2))]);
    expect(swap({ guide }, { piece: SPLAYED }).draws).toEqual([
      draw(source, 'shared', onFaces(['crosscutRight'], ALL, 0.2)),
      draw(source, 'shared', onFaces(['crosscutLeft'], ALL, 0.2)),
    ]);
  });

  test('needs no setting found where there is no swing, but has its slot all the same', () => {
    expect(flip({ guide: { settingDeg: 0.2 } }).draws).toEqual([]);
    expect(swap({ guide: { settingDeg: 0.2 } }).draws).toEqual([]);
    expect(flip({ guide: { slotDeg: 0.2 } }).draws).toHaveLength(1);
  });

  test('seats the strip along its face, or along what is left of the strip', () => {
    const guide = { seatMm: 0.05, faceMm: 300 };
    for (const sequence of ['flipFace', 'swapSides'] as const) {
      const pitch = pitchMm(ringGeometry(projectWith({}).piece), DEFAULT_BLADE, sequence);
      const stripLengthMm = 15 + 8 * pitch + 100;
      const listing = listed(projectWith({ stock: { stripLengthMm, trimMm: 15 }, method: { sequence, guide } }));
      const perCut = listing.draws.map(({ source, stage, faces }) => {
        expect([source, stage]).toEqual(['seat', 'perCut']);
        return Object.values(faces)[0]!;
      });
      const expected = perCut.map((_, cut) => {
        const stave = sequence === 'flipFace' ? Math.max(0, cut - 1) : cut >> 1;
        return 0.05 / Math.min(300, stripLengthMm - 15 - stave * pitch) / RADIANS_PER_DEGREE;
      });
      perCut.forEach((weight, cut) => {
        expect(weight).toBeCloseTo(expected[cut]!, 10);
      });
      // at the end less than the guide's face is left, so the strip sits worse
      expect(perCut.at(-1)!).toBeGreaterThan(1.2 * perCut[0]!);
      expect(Object.keys(listing.draws[1]!.faces)).toEqual(
        sequence === 'flipFace' ? ['crosscutRight 0', 'crosscutLeft 1'] : ['crosscutRight 0'],
      );
    }
  });
});

describe('staves ripped with the grain up', () => {
  const piece = { ...SPLAYED, grain: 'upStave' } as const;

  test('know a setting of the swing and the seat along their height, and nothing else of the guide', () => {
    const guide = { zeroDeg: 0.1, settingDeg: 0.2, slotDeg: 0.3, seatMm: 0.06 };
    const { draws } = flip({ guide }, { piece });
    expect(draws[0]).toEqual(draw('guideSetting', 'shared', onFaces(CROSSCUTS, ALL, 0.2)));
    expect(draws.slice(1)).toEqual(
      byCut('crosscut', () => Number((0.06 / 60 / RADIANS_PER_DEGREE).toFixed(12))).map((faces) =>
        draw('seat', 'perCut', faces),
      ),
    );
  });

  test('cup like any other strip, but run along a fence, so that no second edge is against the guide', () => {
    expect(flip({}, { piece, stock: { edgeTaperDeg: 0.1 } }).draws).toEqual([]);
    expect(flip({}, { piece, stock: { cupMm: 0.1 } }).draws).toHaveLength(1);
  });
});

describe('the strip itself', () => {
  test('cupped leans either way from cut to cut turned over, and one way swapped: four sagittas over the width', () => {
    const stock = { cupMm: 0.05 };
    // by hand: an arc of sagitta f over the width w slopes by 4f/w at its ends
    const slope = Number((((4 * 0.05) / 100) * (180 / Math.PI)).toFixed(12));
    const [flipped] = flip({}, { stock }).draws;
    const alternating = byCut('bevel', (cut) => (cut % 2 === 0 ? slope : -slope));
    expect(flipped).toEqual(draw('flatness', 'perCut', Object.assign({}, ...alternating)));
    expect(swap({}, { stock }).draws).toEqual([draw('flatness', 'perCut', onFaces(BEVELS, ALL, slope))]);
  });

  test('with edges that are not parallel errs on odd cuts turned over, and on left faces swapped', () => {
    const stock = { edgeTaperDeg: 0.01 };
    expect(flip({}, { stock }).draws).toEqual([
      draw('flatness', 'perCut', {
        ...onFaces(['crosscutRight'], [0, 2, 4, 6], 0.01),
        ...onFaces(['crosscutLeft'], [1, 3, 5, 7], 0.01),
      }),
    ]);
    expect(swap({}, { stock }).draws).toEqual([draw('flatness', 'perCut', onFaces(['crosscutLeft'], ALL, 0.01))]);
  });

  test('is drawn strip by strip, and counts its cuts anew on every strip', () => {
    const { draws } = flip({}, { stock: { edgeTaperDeg: 0.01, stripCount: 3 } });
    // strips of three, three and two staves
    expect(draws.map(({ faces }) => faces)).toEqual([
      { 'crosscutRight 0': 0.01, 'crosscutLeft 1': 0.01, 'crosscutRight 2': 0.01 },
      { 'crosscutRight 3': 0.01, 'crosscutLeft 4': 0.01, 'crosscutRight 5': 0.01 },
      { 'crosscutRight 6': 0.01, 'crosscutLeft 7': 0.01 },
    ]);
    expect(swap({}, { stock: { cupMm: 0.05, stripCount: 3 } }).draws).toHaveLength(3);
  });
});
