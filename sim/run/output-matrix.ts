/**
 * What a run follows, as linear functions of the face errors: the six misclosure numbers first, then the reading of a
 * test piece and the tilt setting when there are test cuts, then the N clear half-openings when sizes are asked for.
 */
import { halfOpeningColumns } from '../closure/half-openings';
import type { JointGive } from '../closure/joint-give';
import { ERRORS_PER_STAVE, type RingMaps } from '../closure/ring-maps';
import { nominalPose, rightFace } from '../geometry/faces';
import { turn } from '../geometry/vectors';

/** Rows are the 5N face errors and the tilt setting; `width` outputs a row. Places not followed are −1. */
export interface OutputMatrix {
  width: number;
  values: Float64Array;
  /** Reading of a test piece, mm; the tilt setting, radians. */
  readingAt: number;
  tiltAt: number;
  /** How far the end faces of the first half ring are from one plane: turns about the edge and across it, radians. */
  halfTurnAt: number;
  /** Where the half-openings begin; equal to `width` when there are none. */
  halvesAt: number;
}

export function outputMatrix(
  maps: RingMaps,
  give: JointGive,
  wanted: { readingRow?: Float64Array; halfTurn: boolean; sizes: boolean },
): OutputMatrix {
  const n = maps.sides;
  const errors = n * ERRORS_PER_STAVE;
  let next = 6;
  const take = (count: number, on: boolean): number => {
    if (!on) return -1;
    next += count;
    return next - count;
  };
  const readingAt = take(1, wanted.readingRow !== undefined);
  const tiltAt = take(1, wanted.readingRow !== undefined);
  const halfTurnAt = take(2, wanted.halfTurn);
  const halvesAt = next;
  const width = halvesAt + (wanted.sizes ? n : 0);
  const values = new Float64Array((errors + 1) * width);
  const halves = wanted.sizes ? halfOpeningColumns(maps, give) : undefined;
  const halfTurns = wanted.halfTurn ? halfTurnColumns(maps) : undefined;
  for (let error = 0; error < errors; error++) {
    const at = error * width;
    values.set(maps.errorColumns.subarray(error * 6, error * 6 + 6), at);
    if (wanted.readingRow) values[at + readingAt] = wanted.readingRow[error]!;
    if (halfTurns) values.set(halfTurns.subarray(error * 2, error * 2 + 2), at + halfTurnAt);
    if (halves) values.set(halves.subarray(error * n, error * n + n), at + halvesAt);
  }
  if (tiltAt >= 0) values[errors * width + tiltAt] = 1;
  return { width, values, readingAt, tiltAt, halfTurnAt, halvesAt };
}

/** 5N columns of 2: turn between the end faces of the first half ring, about its far edge and across it, per radian. */
function halfTurnColumns(maps: RingMaps): Float64Array {
  const half = maps.sides / 2;
  const columns = new Float64Array(maps.sides * ERRORS_PER_STAVE * 2);
  const pose = nominalPose(maps.geometry, half - 1);
  const face = rightFace(maps.geometry.bevelRad, maps.geometry.crosscutRad, maps.geometry.staveWidthMidMm);
  const across = [turn(pose, face.e), turn(pose, face.b)];
  for (let error = 0; error < half * ERRORS_PER_STAVE; error++) {
    across.forEach((axis, way) => {
      for (let k = 0; k < 3; k++) {
        columns[error * 2 + way]! += (axis[k]! * maps.errorColumns[error * 6 + k]!) / maps.scaleMm;
      }
    });
  }
  return columns;
}

/** The reading of a test piece alone. */
export function readingMatrix(readingRow: Float64Array): OutputMatrix {
  const values = new Float64Array(readingRow.length + 1);
  values.set(readingRow);
  return { width: 1, values, readingAt: 0, tiltAt: -1, halfTurnAt: -1, halvesAt: 1 };
}

/** What a set of effects does to every output; written over `out` where one is given. */
export function outputsOf(
  { width, values }: OutputMatrix,
  { index, weight }: { index: number[]; weight: number[] },
  out = new Float64Array(width),
): Float64Array {
  out.fill(0);
  for (let k = 0; k < index.length; k++) {
    const at = index[k]! * width;
    for (let o = 0; o < width; o++) out[o]! += weight[k]! * values[at + o]!;
  }
  return out;
}
