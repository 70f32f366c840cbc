/** What a blade pushed aside does to faces and widths, and the marks it leaves. */
import { describe, expect, test } from 'vitest';
import { activeSources } from '../../../sim/errors/sources';
import { RADIANS_PER_DEGREE } from '../../../sim/geometry/ring';
import type { Project } from '../../../sim/project/document';
import { ALL, draw, flip, listed, onFaces, swap } from '../../support/draws';
import { projectWith } from '../../support/projects';

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
