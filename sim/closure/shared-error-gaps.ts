/** The gaps that a ring closes with when all its faces are off alike. */
import type { RingGeometry } from '../geometry/ring';
import { DEFAULT_ASSEMBLY } from '../project/defaults';
import type { Assembly } from '../project/document';
import { ringCloser } from './ring-closer';
import {
  BEVEL_LEFT,
  BEVEL_RIGHT,
  CROSSCUT_LEFT,
  CROSSCUT_RIGHT,
  ERRORS_PER_STAVE,
  misclosureOf,
  ringMaps,
} from './ring-maps';

/**
 * @param bevelRad what every face has too much of the bevel; `crosscutRad` likewise
 * @returns mm, 0 or above: along the outer and along the inner edge, of the joint that opens most; alike for all that are closed
 * at once. By contact.
 */
export function sharedErrorGaps(
  geometry: RingGeometry,
  bevelRad: number,
  crosscutRad: number,
  assembly: Assembly = DEFAULT_ASSEMBLY,
): [number, number] {
  const maps = ringMaps(geometry);
  const errors = new Float64Array(geometry.sides * ERRORS_PER_STAVE);
  for (let at = 0; at < errors.length; at += ERRORS_PER_STAVE) {
    errors[at + BEVEL_RIGHT] = bevelRad;
    errors[at + BEVEL_LEFT] = bevelRad;
    errors[at + CROSSCUT_RIGHT] = crosscutRad;
    errors[at + CROSSCUT_LEFT] = crosscutRad;
  }
  const closer = ringCloser(maps, assembly, 'contact');
  closer.close(misclosureOf(maps, errors), 0, new Float64Array(3 * geometry.sides), 0, new Float64Array(8), 0);
  return [Math.max(0, ...closer.outer), Math.max(0, ...closer.inner)];
}
