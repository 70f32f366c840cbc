/** Projects with one method, written as what differs from the defaults; every error is zero unless given. */
import { DEFAULT_COSTS, DEFAULT_LIMITS, DEFAULT_RUN, DEFAULT_STOCK, defaultMethod } from '../../sim/project/defaults';
import type { Costs, Limits, Method, Piece, Project, RunSettings, Stock } from '../../sim/project/document';

type GroupChanges = { [Group in Exclude<keyof Method, 'name' | 'sequence' | 'wideFace'>]?: Partial<Method[Group]> };
export type MethodChanges = GroupChanges & Partial<Pick<Method, 'sequence' | 'wideFace'>>;

export interface ProjectChanges {
  piece?: Partial<Piece>;
  stock?: Partial<Stock>;
  limits?: Partial<Limits>;
  costs?: Partial<Costs>;
  run?: Partial<RunSettings>;
  method?: MethodChanges;
}

export function methodWith(changes: MethodChanges): Method {
  const plain = defaultMethod('Only');
  return {
    ...plain,
    ...changes,
    tilt: { ...plain.tilt, ...changes.tilt },
    guide: { ...plain.guide, ...changes.guide },
    width: { ...plain.width, ...changes.width },
    blade: { ...plain.blade, ...changes.blade },
    assembly: { ...plain.assembly, ...changes.assembly },
    test: { ...plain.test, ...changes.test },
    minutes: { ...plain.minutes, ...changes.minutes },
  };
}

/** Eight upright staves of 100 mm, 120 mm high and 18 mm thick, unless the changes say otherwise. */
export function projectWith(changes: ProjectChanges): Project {
  return {
    format: 'ringtrue',
    version: 1,
    title: 'Test piece',
    display: 'metric',
    piece: {
      sides: 8,
      slopeDeg: 0,
      grain: 'alongRing',
      size: { by: 'staveWidth', mm: 100 },
      heightMm: 120,
      thicknessMm: 18,
      showFace: 'outside',
      ...changes.piece,
    },
    stock: { ...DEFAULT_STOCK, ...changes.stock },
    limits: { ...DEFAULT_LIMITS, ...changes.limits },
    costs: { ...DEFAULT_COSTS, ...changes.costs },
    methods: [methodWith(changes.method ?? {})],
    run: { ...DEFAULT_RUN, ...changes.run },
  };
}
