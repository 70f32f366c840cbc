/**
 * The ring in plan with its gaps drawn wider than they are: staves keep their places, and each is cut back at either end
 * by half the exaggerated gap. Mm around the ring's axis, x to the right, y down the sheet, seen on the narrow end, so
 * that staves follow one another counter-clockwise.
 */
import type { Piece } from '../../sim/project/document';
import type { JointOpening } from '../../sim/run/single-ring';
import { shownGap } from '../../sim/wording/joints';
import { type PlanOutline, type Point, planOutline } from './ring-outline';

export interface GapOutline {
  plan: PlanOutline;
  /** The times gaps are wider than they are; less than was asked for where staves would vanish. */
  exaggeration: number;
  staves: StaveOutline[];
  joints: JointOutline[];
}

export interface StaveOutline {
  /** All of the stave that is seen from above. */
  whole: Point[];
  /** Its sawn narrow end alone; empty where it is seen edge on. */
  end: Point[];
}

export interface JointOutline {
  /** The open space between the two staves. */
  gap: Point[];
  /** Direction from the axis to the joint. */
  away: Point;
  /** The ring's corner and the corner of its opening where the joint's outer and inner edge lie. */
  outer: Point;
  inner: Point;
}

/** Of a stave's narrowest width, at most so much is given to its two gaps together. */
const MOST_OF_STAVE = 0.6;

/** How many times wider gaps can be drawn before a stave would vanish between them. */
export function mostExaggeration(piece: Piece, joints: readonly JointOpening[]): number {
  const plan = planOutline(piece);
  const narrowest = 2 * plan.innerNarrow.radiusMm * Math.tan(Math.PI / piece.sides);
  const widest = Math.max(...joints.map(({ outerMm, innerMm }) => Math.max(outerMm, innerMm)));
  const cutBack = widest / Math.cos(Math.PI / piece.sides);
  if (cutBack === 0) return Number.POSITIVE_INFINITY;
  const most = (MOST_OF_STAVE * narrowest) / cutBack;
  return most > 10 ? Math.floor(most) : most;
}

/** Joint i lies between stave i and stave i + 1. */
export function gapOutline(piece: Piece, joints: readonly JointOpening[], wanted: number): GapOutline {
  const { sides } = piece;
  const plan = planOutline(piece);
  const exaggeration = Math.min(wanted, mostExaggeration(piece, joints));
  const slant = Math.tan(Math.PI / sides);
  const { outerWide, outerNarrow, innerNarrow } = plan;
  const isFlat = outerNarrow.radiusMm - innerNarrow.radiusMm < 1e-6;

  /** A point of stave `stave`: so far from the axis, so far along the ring. */
  const at = (stave: number, radius: number, along: number): Point => {
    const angle = (2 * stave * Math.PI) / sides - plan.firstFlatRad;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return { x: radius * c - along * s, y: -radius * s - along * c };
  };
  /** How far a stave is cut back along itself, so that the gap square to the joint is as wide as it shall be. */
  const half = (joint: number, side: keyof JointOpening): number =>
    (widthOf(joints[(joint + sides) % sides], side) * exaggeration) / (2 * Math.cos(Math.PI / sides));
  /** Of flat work only the face that shows is seen, all along the joint. */
  const widthOf = (opening: JointOpening | undefined, side: keyof JointOpening): number =>
    opening ? (isFlat ? shownGap(opening, piece.showFace) : opening[side]) : 0;

  /** Where the stave ends towards its own joint (+1) or the one before it (−1), from the wide outer edge inward. */
  const endOf = (stave: number, towards: 1 | -1): Point[] => {
    const joint = towards === 1 ? stave : stave - 1;
    const along = (radius: number, side: keyof JointOpening) => towards * (radius * slant - half(joint, side));
    const points = [
      at(stave, outerWide.radiusMm, along(outerWide.radiusMm, 'outerMm')),
      at(stave, outerNarrow.radiusMm, along(outerNarrow.radiusMm, 'outerMm')),
    ];
    if (!isFlat) points.push(at(stave, innerNarrow.radiusMm, along(innerNarrow.radiusMm, 'innerMm')));
    return points;
  };

  const staves = Array.from({ length: sides }, (_, stave): StaveOutline => {
    const [right, left] = [endOf(stave, 1), endOf(stave, -1)];
    const whole = [...right, ...left.toReversed()];
    return { whole, end: isFlat ? [] : [...right.slice(1), ...left.slice(1).toReversed()] };
  });
  const outlines = Array.from({ length: sides }, (_, joint): JointOutline => {
    const angle = ((2 * joint + 1) * Math.PI) / sides - plan.firstFlatRad;
    const away = { x: Math.cos(angle), y: -Math.sin(angle) };
    const corner = (radius: number): Point => {
      const reach = radius / Math.cos(Math.PI / sides);
      return { x: reach * away.x, y: reach * away.y };
    };
    return {
      gap: [...endOf(joint, 1), ...endOf((joint + 1) % sides, -1).toReversed()],
      away,
      outer: corner(outerWide.radiusMm),
      inner: corner(innerNarrow.radiusMm),
    };
  });
  return { plan, exaggeration, staves, joints: outlines };
}

const ROUND = [1, 2, 5, 10];
/** At this part of a stave's width a gap is plain to see. */
const PLAIN_OF_STAVE = 0.22;

/** A round exaggeration at which a gap as wide as `gapMm` is plain to see. */
export function suitedExaggeration(piece: Piece, gapMm: number): number {
  const plan = planOutline(piece);
  const wide = 2 * plan.outerWide.radiusMm * Math.tan(Math.PI / piece.sides);
  const wanted = Math.max(1, (PLAIN_OF_STAVE * wide) / Math.max(gapMm, 0.01));
  const power = 10 ** Math.floor(Math.log10(wanted));
  return (ROUND.filter((step) => step * power <= wanted).at(-1) ?? 1) * power;
}
