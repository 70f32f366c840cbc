/**
 * The closure of a ring solved exactly, to measure how far the first-order maps hold: the exact chain is linearised anew
 * at the joints' present movements and the least-cost set found again, until the chain itself returns to its start.
 */
import { contactSolver } from '../../sim/closure/contact';
import { jointGive } from '../../sim/closure/joint-give';
import type { RingMaps } from '../../sim/closure/ring-maps';
import { add, cross, type Frame, place, scale, turn, type Vector } from '../../sim/geometry/vectors';
import type { Ends } from '../../sim/project/document';
import { chainPoses, misclosure, rightFrame, type StaveErrors } from './exact-chain';
import { compose, motion, rotationVector } from './motions';
import { slidesFor } from './slides-for';

/** Movements of a joint: opening a, corner movements b and c (mm), turn ω (radians), slides up the edge and through (mm). */
export type JointMovement = readonly [a: number, b: number, c: number, turn: number, up: number, through: number];

export const STILL: JointMovement = [0, 0, 0, 0, 0, 0];

/** Rotation about the joint's middle, in the frame (e, b, into the wood) of the right face. */
function anglesOf(maps: RingMaps, [, b, c, turning]: JointMovement): Vector {
  const { jointLengthMm: L, edgeLengthMm: H } = maps.geometry;
  return [(2 * b) / L, (2 * c) / H, -turning];
}

/** The movement as a motion in the frame of the right face, whose third axis points into the wood. */
export function giveOf(maps: RingMaps, movement: JointMovement): Frame {
  const [a, , , , up, through] = movement;
  const rotation = motion(anglesOf(maps, movement), [0, 0, 0]);
  const middle: Vector = [0, maps.geometry.jointLengthMm / 2, 0];
  const shift = add(add(middle, [up, through, -a]), scale(turn(rotation, middle), -1));
  return { at: shift, axes: rotation.axes };
}

/** How far a motion misses identity, as the engine's six numbers, mm. */
export function sixNumbers(maps: RingMaps, missed: Frame): Float64Array {
  return Float64Array.from([...scale(rotationVector(missed), maps.scaleMm), ...missed.at]);
}

/** The turn that a small change of a rotation vector adds after the rotation: J·change, to the third order. */
function addedTurn(angles: Vector, change: Vector): Vector {
  const once = cross(angles, change);
  return add(change, add(scale(once, 1 / 2), scale(cross(angles, once), 1 / 6)));
}

/** Six columns of six: what a small change of each movement of the joint does to the misclosure, where it stands now. */
function movementColumns(maps: RingMaps, rightFaceFrame: Frame, movement: JointMovement): Float64Array {
  const { jointLengthMm: L, edgeLengthMm: H } = maps.geometry;
  const [a, , , , up, through] = movement;
  const angles = anglesOf(maps, movement);
  const at = place(rightFaceFrame, [up, L / 2 + through, -a]);
  const unit: [turn: Vector, shift: Vector][] = [
    [
      [0, 0, 0],
      [0, 0, -1],
    ],
    [
      [2 / L, 0, 0],
      [0, 0, 0],
    ],
    [
      [0, 2 / H, 0],
      [0, 0, 0],
    ],
    [
      [0, 0, -1],
      [0, 0, 0],
    ],
    [
      [0, 0, 0],
      [1, 0, 0],
    ],
    [
      [0, 0, 0],
      [0, 1, 0],
    ],
  ];
  const columns = new Float64Array(36);
  unit.forEach(([turning, shift], k) => {
    const angle = turn(rightFaceFrame, addedTurn(angles, turning));
    columns.set(scale(angle, maps.scaleMm), k * 6);
    columns.set(add(turn(rightFaceFrame, shift), cross(at, angle)), k * 6 + 3);
  });
  return columns;
}

export interface ExactClosure {
  movements: JointMovement[];
  /** Largest opening and largest slide of any joint, mm. */
  worstMm: number;
  slideMm: number;
  /** What is left of the misclosure of the exact chain, mm. */
  leftMm: number;
  rounds: number;
}

const FULL_ROUNDS = 10;
const MOST_ROUNDS = 100;

/** Pulls the ring up exactly, with straight faces; `free` joints give, all others are tight. */
export function closeExactly(
  maps: RingMaps,
  errors: readonly StaveErrors[],
  free: Int32Array,
  ends: Ends,
): ExactClosure {
  const n = maps.sides;
  const rows = new Float64Array(3 * n);
  let movements: JointMovement[] = Array.from({ length: n }, () => STILL);
  for (let rounds = 1; ; rounds++) {
    const poses = chainPoses(maps.geometry, errors, (joint) => giveOf(maps, movements[joint]!));
    const missed = sixNumbers(
      maps,
      misclosure(maps.geometry, errors, (joint) => giveOf(maps, movements[joint]!)),
    );
    const leftMm = Math.max(...missed.map(Math.abs));
    const here: RingMaps = {
      ...maps,
      openingColumns: new Float64Array(18 * n),
      slideColumns: new Float64Array(18 * n),
    };
    const target = Float64Array.from(missed);
    for (const joint of free) {
      const frame = compose(poses[joint]!, rightFrame(maps.geometry, errors[joint]!));
      const columns = movementColumns(maps, frame, movements[joint]!);
      here.openingColumns.set(columns.subarray(0, 18), joint * 18);
      here.slideColumns.set(columns.subarray(18), joint * 18);
      for (let k = 0; k < 6; k++) {
        for (let i = 0; i < 6; i++) target[i]! -= columns[k * 6 + i]! * movements[joint]![k]!;
      }
    }
    const solver = contactSolver(jointGive(here, free, ends));
    if (!solver.solve(target, 0, rows, 0)) throw new Error(`The contact solver gave up in round ${rounds}.`);
    const next: JointMovement[] = Array.from({ length: n }, () => STILL);
    free.forEach((joint, f) => {
      const [a, b, c] = solver.openings.subarray(3 * f, 3 * f + 3);
      next[joint] = [a!, b!, c!, ...slidesFor(solver.give, joint, solver.lambda)];
    });
    const moved = Math.max(...next.flatMap((m, joint) => m.map((v, k) => Math.abs(v - movements[joint]![k]!))));
    if (leftMm < 1e-9 && moved < 1e-8) {
      const worstMm = Math.max(...movements.map(([a, b, c]) => a + Math.abs(b) + Math.abs(c)));
      const slideMm = Math.max(...movements.flatMap(([, , , , up, through]) => [Math.abs(up), Math.abs(through)]));
      return { movements, worstMm, slideMm, leftMm, rounds };
    }
    if (rounds === MOST_ROUNDS) throw new Error(`The exact closure still moves by ${moved} mm, misses ${leftMm} mm.`);
    // Where the closure bends strongly the full step may circle around the answer; half a step does not.
    const share = rounds < FULL_ROUNDS ? 1 : 0.5;
    movements = movements.map(
      (m, joint) => m.map((v, k) => v + share * (next[joint]![k]! - v)) as unknown as JointMovement,
    );
  }
}
