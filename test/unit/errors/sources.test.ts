/** What every error source does to the faces of the staves: which faces, which sign, what is shared and what is not. */
import { describe, expect, test } from 'vitest';
import { activeSources, drawList, methodCuts } from '../../../sim/errors/sources';
import { pitchMm, RADIANS_PER_DEGREE, ringGeometry } from '../../../sim/geometry/ring';
import { DEFAULT_BLADE } from '../../../sim/project/defaults';
import { type Project, SOURCE_NAMES, type SourceName } from '../../../sim/project/document';
import { type Faces, listed, onFaces, stavesUpTo } from '../../support/draws';
import { type MethodChanges, projectWith } from '../../support/projects';

const ALL = stavesUpTo(8);
const BEVELS = ['bevelRight', 'bevelLeft'];
const CROSSCUTS = ['crosscutRight', 'crosscutLeft'];
const SPLAYED = { slopeDeg: 30, heightMm: 60 };

const flip = (method: MethodChanges, rest: Parameters<typeof projectWith>[0] = {}) =>
  listed(projectWith({ ...rest, method: { sequence: 'flipFace', ...method } }));
const swap = (method: MethodChanges, rest: Parameters<typeof projectWith>[0] = {}) =>
  listed(projectWith({ ...rest, method: { sequence: 'swapSides', ...method } }));

/** The faces that each cut of one strip of eight makes, with a weight by cut. */
function byCut(angle: 'bevel' | 'crosscut', weight: (cut: number) => number): Faces[] {
  return Array.from({ length: 9 }, (_, cut) => ({
    ...(cut > 0 && { [`${angle}Right ${cut - 1}`]: weight(cut) }),
    ...(cut < 8 && { [`${angle}Left ${cut}`]: weight(cut) }),
  }));
}

/** With sides swapped every face is a cut of its own: left, right, left, right … */
const byFace = (angle: 'bevel' | 'crosscut', weight: number): Faces[] =>
  ALL.flatMap((stave) => [{ [`${angle}Left ${stave}`]: weight }, { [`${angle}Right ${stave}`]: weight }]);

const draw = (source: SourceName, stage: 'shared' | 'perCut', faces: Faces, shape = 'normal') => ({
  source,
  stage,
  shape,
  faces,
});

describe('nothing wrong', () => {
  test('means nothing to draw', () => {
    for (const { list } of [flip({}), swap({})]) {
      expect([list.draws, list.offsets, list.rare]).toEqual([[], [], []]);
      expect([list.bulgeMm, list.snag.chance, list.truingMm]).toEqual([0, 0, 0]);
      expect(activeSources(list).size).toBe(0);
    }
  });
});

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

describe('the blade', () => {
  test('takes half of a wide kerf from either side', () => {
    const blade = { kerfSigmaMm: 0.04 };
    expect(flip({ blade }).draws).toEqual(
      Array.from({ length: 9 }, (_, cut) => ({
        ...(cut > 0 && { [`width ${cut - 1}`]: -0.02 }),
        ...(cut < 8 && { [`width ${cut}`]: -0.02 }),
      })).map((faces) => draw('kerf', 'perCut', faces)),
    );
    // two cuts a stave, each its own kerf
    expect(swap({ blade }).draws).toEqual(
      ALL.flatMap((stave) => [0, 1].map(() => draw('kerf', 'perCut', onFaces(['width'], [stave], -0.02)))),
    );
  });

  // A 250 mm blade with a 100 mm collar: b/a = 0.4, β = 1.615; stiffness given, so that all is by hand.
  const blade = { diameterMm: 250, collarMm: 100, stiffnessNPerMm: 50 };
  const tiltDeg = (newton: number) => (1.615 * (newton / 50)) / 75 / RADIANS_PER_DEGREE;

  test('pushed aside tilts the cut and shifts the kerf: wider stave here, narrower there, turned over', () => {
    const { draws } = flip({ blade: { ...blade, forceSigmaN: 10 } });
    expect(draws).toHaveLength(9);
    const { source, stage, faces } = draws[3]!;
    expect([source, stage, Object.keys(faces)]).toEqual([
      'deflection',
      'perCut',
      ['bevelRight 2', 'bevelLeft 3', 'width 2', 'width 3'],
    ]);
    expect(faces['bevelRight 2']).toBeCloseTo(tiltDeg(10), 9);
    expect(faces['bevelLeft 3']).toBeCloseTo(tiltDeg(10), 9);
    // the stave whose right face it makes loses what the next one gains
    expect(faces['width 2']).toBeCloseTo(-0.2, 12);
    expect(faces['width 3']).toBeCloseTo(0.2, 12);
    expect(draws[0]!.faces['width 0']).toBeCloseTo(0.2, 12);
    expect(draws[8]!.faces['width 7']).toBeCloseTo(-0.2, 12);
  });

  test('pushed aside with sides swapped takes from the stave at either cut', () => {
    const { draws } = swap({ blade: { ...blade, forceSigmaN: 10 } });
    expect(draws).toHaveLength(16);
    expect(draws[4]!.faces['bevelLeft 2']).toBeCloseTo(tiltDeg(10), 9);
    expect(draws[4]!.faces['width 2']).toBeCloseTo(-0.2, 12);
    expect(draws[5]!.faces['bevelRight 2']).toBeCloseTo(tiltDeg(10), 9);
    expect(draws[5]!.faces['width 2']).toBeCloseTo(-0.2, 12);
  });

  test('with a mean force leans all cuts alike; turned over the shifts cancel in every stave', () => {
    const total = ({ offsets }: ReturnType<typeof listed>, name: string) =>
      offsets.reduce((sum, { faces }) => sum + (faces[name] ?? 0), 0);
    const force = { blade: { ...blade, forceMeanN: -5 } };
    for (const stave of ALL) {
      expect(total(flip(force), `bevelRight ${stave}`)).toBeCloseTo(tiltDeg(-5), 9);
      expect(total(flip(force), `width ${stave}`)).toBeCloseTo(0, 12);
      expect(total(swap(force), `bevelLeft ${stave}`)).toBeCloseTo(tiltDeg(-5), 9);
      expect(total(swap(force), `width ${stave}`)).toBeCloseTo(0.2, 12);
    }
    expect(flip(force).offsets.every(({ source }) => source === 'deflection')).toBe(true);
  });
});

describe('marks in the faces', () => {
  const rowsOfCut = (project: Project, cut: number, row: 0 | 1 | 2): Record<string, number> => {
    const { index, weight } = listed(project).list.cutRows[cut]!.rows[row];
    const names = ['bottom', 'middle', 'top'];
    return Object.fromEntries(index.map((at, k) => [`${names[Math.floor(at / 8)]} ${at % 8}`, weight[k]!]));
  };

  test('turned over mate with their own print, ends exchanged', () => {
    const project = projectWith({ method: { sequence: 'flipFace' } });
    // cut 3 makes the right face of stave 2 and the left face of stave 3, which meet in joint 2
    expect(rowsOfCut(project, 3, 0)).toEqual({ 'bottom 2': 1, 'top 2': -1 });
    expect(rowsOfCut(project, 3, 2)).toEqual({ 'top 2': 1, 'bottom 2': -1 });
    const { index, weight } = listed(project).list.cutRows[3]!.rows[1];
    // a bow in the middle lies in its own print and opens nothing
    expect(index).toEqual([8 + 2, 8 + 2]);
    expect(weight[0]! + weight[1]!).toBe(0);
    // first and last cut of the strip meet in the closing joint, each with its own mark
    expect(rowsOfCut(project, 0, 0)).toEqual({ 'top 7': -1 });
    expect(rowsOfCut(project, 8, 0)).toEqual({ 'bottom 7': 1 });
  });

  test('with sides swapped stand alone, each hollow as cut', () => {
    const project = projectWith({ method: { sequence: 'swapSides' } });
    expect(rowsOfCut(project, 4, 0)).toEqual({ 'bottom 1': 1 });
    expect(rowsOfCut(project, 5, 1)).toEqual({ 'middle 2': 1 });
    expect(rowsOfCut(project, 0, 2)).toEqual({ 'top 7': 1 });
  });

  test('are as deep as the force over the stiffness', () => {
    const blade = { stiffnessNPerMm: 40, forceWithinCutN: 2, snagChance: 0.01, snagMeanN: 12, recutAboveMm: 0.25 };
    const { list } = flip({ blade });
    expect(list.bulgeMm).toBeCloseTo(0.05, 12);
    expect(list.snag).toEqual({ chance: 0.01, meanMm: 12 * (1 / 40), recutAboveMm: 0.25 });
    expect([...activeSources(list)]).toEqual(['bulge', 'snags']);
    expect(flip({ blade: { ...blade, recutAboveMm: null } }).list.snag.recutAboveMm).toBe(Number.POSITIVE_INFINITY);
  });

  test('from truing are only on two halves', () => {
    expect(flip({ assembly: { by: 'twoHalves', truingMm: 0.03 } }).list.truingMm).toBe(0.03);
    expect(flip({ assembly: { by: 'allAtOnce', truingMm: 0.03 } }).list.truingMm).toBe(0);
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
