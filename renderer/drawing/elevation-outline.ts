/**
 * The ring from the side in mm: x to the right, y up, x = 0 on the axis. The left half is the outside as it is seen,
 * the right half is cut open through the middle of a stave and shows the inside behind the cut.
 */
import type { Piece } from '../../sim/project/document';
import { type Point, type SectionOutline, sectionOutline } from './ring-outline';

export interface ElevationOutline {
  /** The cut stave. */
  section: SectionOutline;
  /** Outer edge of the left half, from the axis at the narrow end round to the axis at the wide end. */
  outside: Point[];
  /** Edges across the left half. */
  outsideEdges: Point[][];
  /** Edges across the right half, behind the cut. */
  insideEdges: Point[][];
  /** Joints on the outside, each from the narrow end over the wide edge to the inner edge of the wide end. */
  joints: Point[][];
}

export function elevationOutline(piece: Piece): ElevationOutline {
  const section = sectionOutline(piece);
  const { wideOuter, wideInner, narrowOuter, narrowInner } = section;
  const half = Math.PI / piece.sides;
  // Opposite the cut lies a side where their number is even, a joint where it is odd.
  const leftmost = piece.sides % 2 === 0 ? 1 : 1 / Math.cos(half);
  const left = ({ x, y }: Point): Point => ({ x: -x * leftmost, y });
  const onAxis = ({ y }: Point): Point => ({ x: 0, y });

  const joints: Point[][] = [];
  for (let k = 0; k < piece.sides; k += 1) {
    const angle = (2 * k + 1) * half;
    const sideways = Math.cos(angle) / Math.cos(half);
    const isInFront = Math.sin(angle) > 1e-9;
    if (!isInFront || sideways >= -1e-9) continue;
    joints.push([narrowOuter, wideOuter, wideInner].map(({ x, y }) => ({ x: x * sideways, y })));
  }

  return {
    section,
    outside: [onAxis(narrowOuter), left(narrowOuter), left(wideOuter), left(wideInner), onAxis(wideInner)],
    outsideEdges: [[left(wideOuter), onAxis(wideOuter)]],
    insideEdges: [
      [onAxis(narrowOuter), narrowOuter],
      [onAxis(narrowInner), narrowInner],
      [onAxis(wideInner), wideInner],
    ],
    joints,
  };
}
