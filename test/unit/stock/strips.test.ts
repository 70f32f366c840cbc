import { describe, expect, test } from 'vitest';
import { pitchMm, ringGeometry, stripNeededMm } from '../../../sim/geometry/ring';
import { defaultMethod } from '../../../sim/project/defaults';
import type { Method, Project, Sequence } from '../../../sim/project/document';
import { EXAMPLES, exampleProject, planterProject } from '../../../sim/project/example';
import { kerfAlongStripMm, type StripCut, stripsOf } from '../../../sim/stock/strips';

const laidOut = (project: Project, method: Method) => {
  const geometry = ringGeometry(project.piece);
  return { geometry, strips: stripsOf(project, method, geometry) };
};

const withSequence = (sequence: Sequence): Method => ({ ...defaultMethod('any'), sequence });

describe('strips', () => {
  test('carry every stave once, in order, and the cuts that make both its faces', () => {
    for (const example of Object.values(EXAMPLES)) {
      const project = example();
      for (const method of project.methods) {
        const { geometry, strips } = laidOut(project, method);
        const staves = strips.flatMap(({ firstStave, staves }) =>
          Array.from({ length: staves }, (_, k) => firstStave + k),
        );
        expect(staves).toEqual(Array.from({ length: geometry.sides }, (_, i) => i));
        for (const { firstStave, staves: count, cuts } of strips) {
          const faces = (side: 'left' | 'right') => cuts.flatMap((cut) => cut[side] ?? []);
          const own = Array.from({ length: count }, (_, k) => firstStave + k);
          expect(faces('left')).toEqual(own);
          expect(faces('right')).toEqual(own);
        }
      }
    }
  });

  test('with fewer staves need less', () => {
    const project = exampleProject();
    project.stock = { ...project.stock, stripCount: 5 };
    const method = withSequence('flipFace');
    const { geometry, strips } = laidOut(project, method);
    // 12 staves on five strips: three each, and nothing for the fifth.
    expect(strips.map(({ staves }) => staves)).toEqual([3, 3, 3, 3]);
    project.piece = { ...project.piece, sides: 11 };
    const eleven = laidOut(project, method);
    expect(eleven.strips.map(({ staves }) => staves)).toEqual([3, 3, 3, 2]);
    const pitch = pitchMm(eleven.geometry, method.blade, method.sequence);
    const { trimMm, holdMm } = project.stock;
    expect(eleven.strips[3]!.neededMm).toBeCloseTo(trimMm + 2 * pitch + holdMm, 9);
    expect(strips[0]!.neededMm).toBeCloseTo(stripNeededMm(geometry, method.blade, method.sequence, project.stock), 9);
  });

  test('are as long as is said, else just long enough to hold after the last stave', () => {
    const project = exampleProject();
    expect(laidOut(project, withSequence('flipFace')).strips[0]!.lengthMm).toBe(1250);
    const { stripLengthMm: _, ...stock } = project.stock;
    for (const sequence of ['flipFace', 'swapSides'] as const) {
      const [strip] = laidOut({ ...project, stock }, withSequence(sequence)).strips;
      expect(strip!.lengthMm).toBe(strip!.neededMm);
      const kept = sequence === 'flipFace' ? 0 : kerfAlongStripMm(ringGeometry(project.piece), 2.8);
      expect(strip!.cuts.at(-1)!.leftMm).toBeCloseTo(stock.holdMm + kept, 9);
    }
  });
});

describe('cuts on a strip', () => {
  const between = (cuts: readonly StripCut[]) => cuts.slice(1).map((cut, c) => cut.kerfFromMm - cuts[c]!.kerfToMm);

  test('turned over leave one stave between two kerfs, as wide as it is in the middle of its thickness', () => {
    const project = planterProject();
    const method = withSequence('flipFace');
    const { geometry, strips } = laidOut(project, method);
    const middle = geometry.staveWidthMidMm - geometry.thicknessMm * Math.tan(geometry.bevelRad);
    for (const { cuts } of strips) {
      expect(cuts[0]!.kerfToMm).toBeCloseTo(project.stock.trimMm, 12);
      for (const gap of between(cuts)) expect(gap).toBeCloseTo(middle, 9);
    }
  });

  test('with sides swapped leave the stave at its widest, and no wood where a wedge falls out', () => {
    const project = planterProject();
    const { geometry, strips } = laidOut(project, withSequence('swapSides'));
    for (const { cuts } of strips) {
      expect(cuts[0]!.kerfToMm).toBeCloseTo(project.stock.trimMm, 12);
      between(cuts).forEach((gap, c) => {
        expect(gap).toBeCloseTo(c % 2 === 0 ? geometry.staveWidthMm : 0, 9);
      });
    }
  });

  test('take the kerf at its slant: 1/cos 30° of it at six sides, whatever the slope', () => {
    const { geometry, strips } = laidOut(planterProject(), withSequence('flipFace'));
    const { bevelRad, crosscutRad } = geometry;
    for (const { kerfFromMm, kerfToMm } of strips[0]!.cuts) {
      expect(kerfToMm - kerfFromMm).toBeCloseTo(2.8 / Math.cos(Math.PI / 6), 9);
      expect(kerfToMm - kerfFromMm).toBeCloseTo(2.8 / (Math.cos(bevelRad) * Math.cos(crosscutRad)), 9);
    }
  });

  test('turn the strip at every other cut', () => {
    for (const sequence of ['flipFace', 'swapSides'] as const) {
      for (const { cuts } of laidOut(planterProject(), withSequence(sequence)).strips) {
        cuts.forEach(({ turned, order }, c) => {
          expect(order).toBe(c);
          expect(turned).toBe(c % 2 === 1);
        });
      }
    }
  });
});
