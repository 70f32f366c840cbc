/** What an error of the saw that all cuts share adds up to around the ring. */
import { ringMaps } from '../closure/ring-maps';
import { sharedErrorGaps } from '../closure/shared-error-gaps';
import { RADIANS_PER_DEGREE, type RingGeometry } from '../geometry/ring';
import { DEFAULT_TEST } from '../project/defaults';
import type { Assembly, ShowFace } from '../project/document';
import { readingRow, testSetting } from '../testing/test-reading';

export interface SharedError {
  /** The setting that moves the last joint most. */
  setting: 'tilt' | 'swing';
  /** Sum of the ring's angles less 360°, all 2N faces off alike, each too small by the error. */
  ringSumDeg: number;
  /** How far the last joint stands open while all others are tight, mm. */
  mouthMm: number;
  /** The gap of the joint that opens most once the ring is pulled together, mm. */
  jointGapMm: number;
}

/** @param errorDeg how much too small the setting is; @param assembly left out: all joints closed at once */
export function sharedError(
  geometry: RingGeometry,
  showFace: ShowFace,
  errorDeg: number,
  assembly?: Assembly,
): SharedError {
  const { bevelRad, crosscutRad, halfTurnRad, sides } = geometry;
  const row = readingRow(ringMaps(geometry), { ...DEFAULT_TEST, kind: 'fullRing', maxRounds: 1 }, showFace);
  if (row === undefined) throw new Error('A whole ring is always read.');
  const { setting, mmPerDeg } = testSetting(row);
  const off = errorDeg * RADIANS_PER_DEGREE;
  const [bevel, crosscut] = setting === 'tilt' ? [bevelRad - off, crosscutRad] : [bevelRad, crosscutRad - off];
  const halfAngle = Math.acos(Math.cos(bevel) * Math.cos(crosscut));
  return {
    setting,
    ringSumDeg: (2 * sides * (halfAngle - halfTurnRad)) / RADIANS_PER_DEGREE,
    mouthMm: -mmPerDeg * errorDeg,
    jointGapMm: Math.max(...sharedErrorGaps(geometry, bevel - bevelRad, crosscut - crosscutRad, assembly)),
  };
}
