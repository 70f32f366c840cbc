/** How much woods move with moisture, and where each figure comes from. */
import type { Standing } from '../project/preset';

/** What a figure rests on; some were written down from memory of a printed table. */
export type MovementStanding = Standing | { kind: 'from memory'; source: string };

/** Solid wood moves least along a radius of the trunk, more along its rings, hardly at all along the grain. */
export interface SolidMovement {
  kind: 'solid';
  /** Change of size per point of moisture content, as a part of the size at 10 % moisture. */
  radialPerPoint: number;
  tangentialPerPoint: number;
}

/** A sheet moves alike in every direction of its plane. */
export interface SheetMovement {
  kind: 'sheet';
  inPlanePerPoint: number;
  throughPerPoint: number;
}

export type Movement = SolidMovement | SheetMovement;

export interface Wood {
  /** Steady name for code; never shown. */
  id: string;
  label: string;
  /** What people write for it, in small letters. */
  names: readonly string[];
  movement: Movement;
  standing: MovementStanding;
  /** From green to ovendry, percent of the green size; none for sheets and for wood that is not known. */
  shrinkage?: { radialPercent: number; tangentialPercent: number; standing: MovementStanding };
  /** What is taken for granted, when something is. */
  remark?: string;
}

const HANDBOOK = 'Forest Products Laboratory, Wood Handbook, FPL–GTR–190 (2010)';
const SHRINKAGE_TABLE = `${HANDBOOK}, table 4–3`;
const COEFFICIENT_TABLE = `${HANDBOOK}, table 13–5`;

const published = (source: string): MovementStanding => ({ kind: 'published', source });
const remembered = (source: string): MovementStanding => ({ kind: 'from memory', source });

/**
 * Change of size per point of moisture content from the shrinkage green to ovendry, percent of the green size: a
 * straight line from the fibre saturation point, 30 %, to dry, told as a part of the size at 10 %.
 *
 * Source: Wood Handbook, chapter 13, dimensional change calculated from green dimensions, starting at 10 % moisture. It
 * gives back the handbook's table 13–5 except where that pools several oaks.
 */
export function perPointFromShrinkage(shrinkagePercent: number): number {
  const perPoint = shrinkagePercent / 30;
  return perPoint / (100 - 20 * perPoint);
}

const solid = (radialPerPoint: number, tangentialPerPoint: number): Movement => {
  return { kind: 'solid', radialPerPoint, tangentialPerPoint };
};

/** Shrinkage and coefficients as the two tables of the handbook print them. */
function tabled(
  [id, label, ...names]: [id: string, label: string, ...names: string[]],
  [radialPercent, tangentialPercent]: [number, number],
  [radialPerPoint, tangentialPerPoint]: [number, number],
  shrinkageStanding = published(SHRINKAGE_TABLE),
  standing = published(COEFFICIENT_TABLE),
): Wood {
  const shrinkage = { radialPercent, tangentialPercent, standing: shrinkageStanding };
  return { id, label, names, shrinkage, movement: solid(radialPerPoint, tangentialPerPoint), standing };
}

/** Coefficients worked out from the shrinkage. */
function fromShrinkage(
  [id, label, ...names]: [id: string, label: string, ...names: string[]],
  [radialPercent, tangentialPercent]: [number, number],
  standing: MovementStanding,
): Wood {
  const movement = solid(perPointFromShrinkage(radialPercent), perPointFromShrinkage(tangentialPercent));
  return { id, label, names, shrinkage: { radialPercent, tangentialPercent, standing }, movement, standing };
}

/** Woods by name, hardwoods first, then softwood, sheets and the wood that was not named. */
export const WOODS: readonly Wood[] = [
  tabled(['ash', 'White ash', 'ash', 'american ash'], [4.9, 7.8], [0.00169, 0.00274]),
  tabled(['beech', 'American beech', 'beech'], [5.5, 11.9], [0.0019, 0.00431]),
  tabled(['birch', 'Yellow birch', 'birch'], [7.3, 9.5], [0.00256, 0.00338]),
  tabled(['cherry', 'Black cherry', 'cherry', 'american cherry'], [3.7, 7.1], [0.00126, 0.00248]),
  tabled(
    ['maple', 'Sugar maple', 'maple', 'hard maple', 'rock maple'],
    [4.8, 9.9],
    [0.00165, 0.00353],
    remembered(SHRINKAGE_TABLE),
  ),
  tabled(['whiteOak', 'White oak', 'oak', 'american white oak'], [5.6, 10.5], [0.0018, 0.00365]),
  tabled(
    ['redOak', 'Red oak', 'american red oak', 'northern red oak'],
    [4, 8.6],
    [0.00158, 0.00369],
    remembered(SHRINKAGE_TABLE),
    remembered(COEFFICIENT_TABLE),
  ),
  tabled(['walnut', 'Black walnut', 'walnut', 'american walnut'], [5.5, 7.8], [0.0019, 0.00274]),
  fromShrinkage(
    ['poplar', 'Yellow-poplar', 'yellow poplar', 'poplar', 'tulipwood'],
    [4.6, 8.2],
    published(SHRINKAGE_TABLE),
  ),
  fromShrinkage(
    ['whitePine', 'Eastern white pine', 'white pine', 'weymouth pine'],
    [2.1, 6.1],
    remembered(SHRINKAGE_TABLE),
  ),
  {
    id: 'plywood',
    label: 'Plywood',
    names: ['ply', 'birch ply', 'birch plywood', 'baltic birch'],
    movement: { kind: 'sheet', inPlanePerPoint: 0.0002, throughPerPoint: 0.0025 },
    standing: { kind: 'assumed' },
    remark:
      'Plywood is taken to move 0.02 % a point of moisture in its plane, alike in both directions, and 0.25 % through ' +
      'its thickness, as its veneers do.',
  },
  {
    id: 'other',
    label: 'Other wood',
    names: ['other'],
    movement: solid(0.0018, 0.0032),
    standing: { kind: 'assumed' },
    remark:
      'It is taken to move as a middling hardwood does, 0.18 % a point of moisture across the growth rings and 0.32 % ' +
      'along them.',
  },
];

const plain = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');

/** The wood that a project's `stock.wood` stands for; undefined when its movement is not known here. */
export function woodNamed(name: string): Wood | undefined {
  const wanted = plain(name);
  return WOODS.find((wood) => plain(wood.label) === wanted || wood.names.includes(wanted));
}
