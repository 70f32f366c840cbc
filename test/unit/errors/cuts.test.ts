/** Which cut makes which faces, and what length of strip is still in hand. */
import { describe, expect, test } from 'vitest';
import { cutsOf } from '../../../sim/errors/cuts';
import { methodCuts } from '../../../sim/errors/sources';
import { pitchMm, ringGeometry } from '../../../sim/geometry/ring';
import { projectWith } from '../../support/projects';

const faces = (cuts: ReturnType<typeof cutsOf>) =>
  cuts.map(({ strip, order, right, left }) => [strip, order, right, left]);

describe('a strip that is turned over after every cut', () => {
  test('takes one cut more than it has staves, and a cut between two staves makes a face of either', () => {
    expect(faces(cutsOf(4, 'flipFace', [4], 1000, 15, 100))).toEqual([
      [0, 0, undefined, 0],
      [0, 1, 0, 1],
      [0, 2, 1, 2],
      [0, 3, 2, 3],
      [0, 4, 3, undefined],
    ]);
  });

  test('begins anew with every strip', () => {
    expect(faces(cutsOf(5, 'flipFace', [3, 2], 1000, 15, 100))).toEqual([
      [0, 0, undefined, 0],
      [0, 1, 0, 1],
      [0, 2, 1, 2],
      [0, 3, 2, undefined],
      [1, 0, undefined, 3],
      [1, 1, 3, 4],
      [1, 2, 4, undefined],
    ]);
  });
});

describe('a strip whose ends are swapped', () => {
  test('takes two cuts for every stave', () => {
    expect(faces(cutsOf(3, 'swapSides', [2, 1], 1000, 15, 100))).toEqual([
      [0, 0, undefined, 0],
      [0, 1, 0, undefined],
      [0, 2, undefined, 1],
      [0, 3, 1, undefined],
      [1, 0, undefined, 2],
      [1, 1, 2, undefined],
    ]);
  });
});

describe('the strip in hand', () => {
  test('is what is left after trimming and the staves cut before', () => {
    const swapped = cutsOf(3, 'swapSides', [3], 700, 20, 110);
    expect(swapped.map((cut) => cut.inHandMm)).toEqual([680, 680, 570, 570, 460, 460]);
    const flipped = cutsOf(3, 'flipFace', [3], 700, 20, 110);
    expect(flipped.map((cut) => cut.inHandMm)).toEqual([680, 680, 570, 460]);
  });

  test('comes from a strip that is just long enough when none is given', () => {
    const project = projectWith({
      stock: { stripCount: 2, trimMm: 10, holdMm: 250 },
      method: { sequence: 'swapSides' },
    });
    const geometry = ringGeometry(project.piece);
    const [method] = project.methods;
    const pitch = pitchMm(geometry, method!.blade, 'swapSides');
    const cuts = methodCuts(project, method!, geometry);
    expect(cuts).toHaveLength(16);
    // at the last stave of four: its own pitch and the hold length
    expect(cuts[7]!.inHandMm).toBeCloseTo(pitch + 250, 9);
    const given = projectWith({ stock: { stripLengthMm: 2000 }, method: { sequence: 'swapSides' } });
    expect(methodCuts(given, given.methods[0]!, geometry)[15]!.inHandMm).toBeCloseTo(2000 - 15 - 7 * pitch, 9);
  });
});
