/**
 * What a test piece reads per face error, to first order, and which setting it is used to correct.
 *
 * Positive readings mean open at the show edge, so bevels that are too small read positive. mm per radian (or per mm
 * of width).
 */
import {
  BEVEL_LEFT,
  BEVEL_RIGHT,
  CROSSCUT_LEFT,
  CROSSCUT_RIGHT,
  ERRORS_PER_STAVE,
  type RingMaps,
  WIDTH,
} from '../closure/ring-maps';
import type { DrawList } from '../errors/draw-list';
import { leftFace, nominalPose, rightFace } from '../geometry/faces';
import { RADIANS_PER_DEGREE } from '../geometry/ring';
import { cross, dot, place, scale, turn, type Vector } from '../geometry/vectors';
import type { ShowFace, TestCuts } from '../project/document';

/** Readings below this per degree say too little to correct anything, mm. */
export const LEAST_SENSITIVITY_MM_PER_DEG = 1;

function mouthRow(maps: RingMaps, showFace: ShowFace): Float64Array {
  const mouth = showFace === 'inside' ? maps.mouthInner : maps.mouthOuter;
  const row = new Float64Array(maps.sides * ERRORS_PER_STAVE);
  for (let error = 0; error < row.length; error++) {
    for (let k = 0; k < 6; k++) row[error]! += mouth[k]! * maps.errorColumns[error * 6 + k]!;
  }
  return row;
}

/** Half a ring, its first end face flat on a straightedge: how far its other outer edge stands off, at mid-height. */
function halfRingRow(maps: RingMaps): Float64Array {
  const { geometry, sides, scaleMm } = maps;
  const half = Math.floor(sides / 2);
  const first = nominalPose(geometry, 0);
  const last = nominalPose(geometry, half - 1);
  const left = leftFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
  const right = rightFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
  const off = scale(turn(first, left.n), -1);
  const farEdge = place(last, right.at);
  const turning = cross(farEdge, off);
  const row = new Float64Array(sides * ERRORS_PER_STAVE);
  const stands = (error: number) => {
    let sum = 0;
    for (let k = 0; k < 3; k++) {
      sum += (turning[k]! / scaleMm) * maps.errorColumns[error * 6 + k]!;
      sum += off[k]! * maps.errorColumns[error * 6 + 3 + k]!;
    }
    return sum;
  };
  for (let i = 0; i < half; i++) {
    const at = i * ERRORS_PER_STAVE;
    row[at + BEVEL_LEFT] = stands(at + BEVEL_LEFT);
    row[at + CROSSCUT_LEFT] = stands(at + CROSSCUT_LEFT);
    row[at + WIDTH] = stands(at + WIDTH);
    // The far end's own face turns about the very edge that is read.
    if (i < half - 1) {
      row[at + BEVEL_RIGHT] = stands(at + BEVEL_RIGHT);
      row[at + CROSSCUT_RIGHT] = stands(at + CROSSCUT_RIGHT);
    }
  }
  return row;
}

/** Two faces held against a reference angle: the turn about the ring's axis, read at the end of an arm. */
function pairRow(maps: RingMaps, armMm: number): Float64Array {
  const { geometry } = maps;
  const pose = nominalPose(geometry, 0);
  const right = rightFace(geometry.bevelRad, geometry.crosscutRad, geometry.staveWidthMidMm);
  const axis: Vector = [0, 0, 1];
  const perBevel = -armMm * dot(turn(pose, right.e), axis);
  const perCrosscut = -armMm * dot(pose.axes[2], axis);
  const row = new Float64Array(maps.sides * ERRORS_PER_STAVE);
  row[BEVEL_RIGHT] = perBevel;
  row[CROSSCUT_RIGHT] = perCrosscut;
  row[ERRORS_PER_STAVE + BEVEL_LEFT] = perBevel;
  row[ERRORS_PER_STAVE + CROSSCUT_LEFT] = perCrosscut;
  return row;
}

/** Reading per face error, 5N numbers; undefined when there are no test cuts. */
export function readingRow(maps: RingMaps, test: TestCuts, showFace: ShowFace): Float64Array | undefined {
  if (test.maxRounds === 0) return undefined;
  switch (test.kind) {
    case 'none':
      return undefined;
    case 'fullRing':
      return mouthRow(maps, showFace);
    case 'twoHalvesTogether':
      return mouthRow(maps, 'outside');
    case 'halfRing':
      return halfRingRow(maps);
    case 'pair':
      return pairRow(maps, test.armMm ?? maps.geometry.staveWidthMm);
  }
}

export interface TestSetting {
  /** Which setting the reading corrects. */
  setting: 'tilt' | 'swing';
  /** Reading per degree of that setting, mm; negative, since too small an angle reads open. */
  mmPerDeg: number;
}

/** The setting that moves the reading most. */
export function testSetting(row: Float64Array): TestSetting {
  let [tilt, swing] = [0, 0];
  for (let at = 0; at < row.length; at += ERRORS_PER_STAVE) {
    tilt += (row[at + BEVEL_RIGHT]! + row[at + BEVEL_LEFT]!) * RADIANS_PER_DEGREE;
    swing += (row[at + CROSSCUT_RIGHT]! + row[at + CROSSCUT_LEFT]!) * RADIANS_PER_DEGREE;
  }
  return Math.abs(swing) > Math.abs(tilt) ? { setting: 'swing', mmPerDeg: swing } : { setting: 'tilt', mmPerDeg: tilt };
}

/** Reading that the deliberate aim of the tilt causes, mm, by the test piece's reading per face error. */
export function aimReading(list: DrawList, row: Float64Array): number {
  let sum = 0;
  for (const { source, index, weight } of list.offsets) {
    if (source !== 'aim') continue;
    index.forEach((error, k) => {
      if (error < list.sides * ERRORS_PER_STAVE) sum += row[error]! * weight[k]!;
    });
  }
  return sum;
}
