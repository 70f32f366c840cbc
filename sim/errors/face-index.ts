/** Where the errors of a cut sit in the vector of 5N face errors and, past them, the tilt setting. */
import { BEVEL_LEFT, BEVEL_RIGHT, CROSSCUT_LEFT, CROSSCUT_RIGHT, ERRORS_PER_STAVE, WIDTH } from '../closure/ring-maps';
import type { Cut } from './cuts';
import type { Effects } from './draw-list';

export type Angle = 'bevel' | 'crosscut';

const OFFSETS = {
  bevel: { right: BEVEL_RIGHT, left: BEVEL_LEFT },
  crosscut: { right: CROSSCUT_RIGHT, left: CROSSCUT_LEFT },
} as const;

/** `weightRight` on the right faces and `weightLeft` on the left faces that the cuts make. */
export function anglesOf(cuts: readonly Cut[], angle: Angle, weightRight: number, weightLeft = weightRight): Effects {
  const effects: Effects = { index: [], weight: [] };
  for (const cut of cuts) {
    if (cut.right !== undefined && weightRight !== 0) {
      effects.index.push(cut.right * ERRORS_PER_STAVE + OFFSETS[angle].right);
      effects.weight.push(weightRight);
    }
    if (cut.left !== undefined && weightLeft !== 0) {
      effects.index.push(cut.left * ERRORS_PER_STAVE + OFFSETS[angle].left);
      effects.weight.push(weightLeft);
    }
  }
  return effects;
}

/** The same weight on the width of every stave named. */
export function widthsOf(staves: readonly number[], weight: number): Effects {
  return { index: staves.map((i) => i * ERRORS_PER_STAVE + WIDTH), weight: staves.map(() => weight) };
}

/** Weights on the width of the staves whose right or left face the cut makes. */
export function widthsOfCut(cut: Cut, weightRight: number, weightLeft: number): Effects {
  const effects: Effects = { index: [], weight: [] };
  if (cut.right !== undefined) {
    effects.index.push(cut.right * ERRORS_PER_STAVE + WIDTH);
    effects.weight.push(weightRight);
  }
  if (cut.left !== undefined) {
    effects.index.push(cut.left * ERRORS_PER_STAVE + WIDTH);
    effects.weight.push(weightLeft);
  }
  return effects;
}

/** One number past the face errors: the tilt setting itself, so that a run can follow it through its test cuts. */
export function onTilt(sides: number, weight: number): Effects {
  return { index: [sides * ERRORS_PER_STAVE], weight: [weight] };
}

export function both(a: Effects, b: Effects): Effects {
  return { index: [...a.index, ...b.index], weight: [...a.weight, ...b.weight] };
}
