/** The elementary draws of a method, written out so that tests can compare them with what the workshop does. */
import { ERRORS_PER_STAVE } from '../../sim/closure/ring-maps';
import type { DrawList, Effects } from '../../sim/errors/draw-list';
import { drawList, methodCuts } from '../../sim/errors/sources';
import { RADIANS_PER_DEGREE, ringGeometry } from '../../sim/geometry/ring';
import type { Project, SourceName } from '../../sim/project/document';
import { type MethodChanges, type ProjectChanges, projectWith } from './projects';
import { ERROR_KEYS } from './rings';

/** Face errors by name: `bevelRight 0` is the bevel of the right face of stave 0. Degrees, and mm for widths. */
export type Faces = Record<string, number>;

/** What one unit of a draw does to each face; the tilt setting itself appears as `tilt`. Weights on one face add up. */
export function facesOf(effects: Effects, sides: number): Faces {
  const faces: Faces = {};
  effects.index.forEach((index, k) => {
    const key = ERROR_KEYS[index % ERRORS_PER_STAVE]!;
    const name = index === sides * ERRORS_PER_STAVE ? 'tilt' : `${key} ${Math.floor(index / ERRORS_PER_STAVE)}`;
    const unit = name !== 'tilt' && key === 'width' ? 1 : RADIANS_PER_DEGREE;
    const sum = (faces[name] ?? 0) + effects.weight[k]! / unit;
    // Rounded so that degrees turned to radians and back compare equal.
    faces[name] = Number(sum.toFixed(12));
  });
  return faces;
}

/** The same weight on every named face of the staves given. */
export function onFaces(names: readonly string[], staves: readonly number[], weight: number): Faces {
  return Object.fromEntries(
    staves.flatMap((stave) => names.map((name) => [`${name} ${stave}`, Number(weight.toFixed(12))])),
  );
}

export const stavesUpTo = (sides: number): number[] => Array.from({ length: sides }, (_, i) => i);

export interface Listed {
  list: DrawList;
  sides: number;
  /** The draws in order: what each is and what one unit of it does. */
  draws: { source: SourceName; stage: string; shape: string; faces: Faces }[];
  offsets: { source: SourceName | 'aim'; stage: string; faces: Faces }[];
}

export function listed(project: Project): Listed {
  const geometry = ringGeometry(project.piece);
  const method = project.methods[0]!;
  const list = drawList(project, method, geometry, methodCuts(project, method, geometry));
  const { sides } = geometry;
  return {
    list,
    sides,
    draws: list.draws.map(({ source, stage, shape, ...effects }) => ({
      source,
      stage,
      shape,
      faces: facesOf(effects, sides),
    })),
    offsets: list.offsets.map(({ source, stage, ...effects }) => ({ source, stage, faces: facesOf(effects, sides) })),
  };
}

/** The eight staves of the test piece. */
export const ALL = stavesUpTo(8);
export const BEVELS = ['bevelRight', 'bevelLeft'];
export const CROSSCUTS = ['crosscutRight', 'crosscutLeft'];
export const SPLAYED = { slopeDeg: 30, heightMm: 60 };

export const flip = (method: MethodChanges, rest: ProjectChanges = {}) =>
  listed(projectWith({ ...rest, method: { sequence: 'flipFace', ...method } }));
export const swap = (method: MethodChanges, rest: ProjectChanges = {}) =>
  listed(projectWith({ ...rest, method: { sequence: 'swapSides', ...method } }));

/** The faces that each cut of one strip of eight makes, with a weight by cut. */
export function byCut(angle: 'bevel' | 'crosscut', weight: (cut: number) => number): Faces[] {
  return Array.from({ length: 9 }, (_, cut) => ({
    ...(cut > 0 && { [`${angle}Right ${cut - 1}`]: weight(cut) }),
    ...(cut < 8 && { [`${angle}Left ${cut}`]: weight(cut) }),
  }));
}

/** With sides swapped every face is a cut of its own: left, right, left, right … */
export const byFace = (angle: 'bevel' | 'crosscut', weight: number): Faces[] =>
  ALL.flatMap((stave) => [{ [`${angle}Left ${stave}`]: weight }, { [`${angle}Right ${stave}`]: weight }]);

export const draw = (source: SourceName, stage: 'shared' | 'perCut', faces: Faces, shape = 'normal') => ({
  source,
  stage,
  shape,
  faces,
});
