/**
 * What a change of moisture does to the saw settings that are in the wood. Lengths mm, radians inside.
 *
 * Wood does not shrink alike in its three directions. With the shrinkages ε along the ring (x), up the face (y) and
 * through the thickness (z) a point of a stave goes to ((1 − ε_x)x, (1 − ε_y)y, (1 − ε_z)z): faces stay flat, and a
 * face of normal n gets one along (n_x/(1 − ε_x), n_y/(1 − ε_y), n_z/(1 − ε_z)). The joint faces have the normals
 * (±cos B cos M, cos B sin M, −sin B); hence, for any slope,
 *
 *     tan M′ = tan M · (1 − ε_x)/(1 − ε_y)
 *     tan B′ = tan B · [(1 − ε_x)/(1 − ε_z)] · cos M′/cos M
 *
 * since n_x = cos B cos M in both. Upright, tan B′ = tan B · (1 − ε_x)/(1 − ε_z); flat, the mitre alone changes.
 *
 * Every stave stays its own mirror image, so a chain of tight joints turns by twice the angle φ′ between end face and
 * middle plane at every stave, always about the line in which the end faces meet: cos φ′ = cos B′ · cos M′, and the
 * ring's angles add up to 2Nφ′ in place of 360°. Where the sum is short the joints open away from the axis: on the
 * outside, at the outer corner of a frame; where it is over, towards the axis.
 */
import { sharedErrorGaps } from '../closure/shared-error-gaps';
import { RADIANS_PER_DEGREE, type RingGeometry } from '../geometry/ring';
import type { Grain } from '../project/document';
import type { Movement } from './woods';

/** Whether the wide face of the stave lies along the growth rings or across them. */
export type Sawing = 'flatsawn' | 'quartersawn';

/** How much smaller a stave gets, as parts of its size; negative when it swells. */
export interface StaveShrinkage {
  alongRing: number;
  upFace: number;
  throughThickness: number;
}

/** Fibre saturation: wetter wood does not swell any more. */
const MOST_POINTS = 30;

/**
 * Shrinkage of a stave in its own three directions. Along the grain wood is taken not to move.
 *
 * @param moisturePoints change of moisture content, points of percent, −30 to 30; below 0 the wood dries
 * @throws RangeError outside that range. The tables behind the movements hold best between 6 and 14 % moisture.
 */
export function staveShrinkage(
  movement: Movement,
  grain: Grain,
  sawing: Sawing,
  moisturePoints: number,
): StaveShrinkage {
  if (!(Math.abs(moisturePoints) <= MOST_POINTS)) {
    throw new RangeError(
      `Change of moisture ${moisturePoints} points is not between −${MOST_POINTS} and ${MOST_POINTS}. ` +
        'Give the moisture content afterwards less that before, in percent.',
    );
  }
  // Not −0 for no change.
  const drying = 0 - moisturePoints;
  if (movement.kind === 'sheet') {
    const inPlane = movement.inPlanePerPoint * drying;
    return { alongRing: inPlane, upFace: inPlane, throughThickness: movement.throughPerPoint * drying };
  }
  const radial = movement.radialPerPoint * drying;
  const tangential = movement.tangentialPerPoint * drying;
  const [acrossFace, throughThickness] = sawing === 'flatsawn' ? [tangential, radial] : [radial, tangential];
  return grain === 'alongRing'
    ? { alongRing: 0, upFace: acrossFace, throughThickness }
    : { alongRing: acrossFace, upFace: 0, throughThickness };
}

export interface SeasonChange {
  bevelDeg: number;
  bevelAfterDeg: number;
  crosscutDeg: number;
  crosscutAfterDeg: number;
  /** Sum of the ring's angles less 360°: below 0 the joints open away from the axis, above 0 towards it. */
  ringSumDeg: number;
  /**
   * Widest opening of each joint if the ring were free to close again, shared evenly. Positive = away from the axis (on
   * the outside; at the outer corners of a flat frame), negative = towards it (inside; at the inner corners).
   */
  jointOpeningMm: number;
  /** Widest opening of each joint along its outer and its inner edge, 0 or above. */
  outsideGapMm: number;
  insideGapMm: number;
  /** What the clear opening at the narrow end gains, joints held closed; below 0 it gets smaller. */
  clearOpeningGainMm: number;
}

/** What happens to a ring, cut and closed without error before the change. The gaps are those of the contact rule. */
export function seasonChange(geometry: RingGeometry, shrinkage: StaveShrinkage): SeasonChange {
  const { bevelRad, crosscutRad, halfTurnRad, sides } = geometry;
  const alongToUp = (1 - shrinkage.alongRing) / (1 - shrinkage.upFace);
  const alongToThrough = (1 - shrinkage.alongRing) / (1 - shrinkage.throughThickness);
  const crosscutAfter = Math.atan(Math.tan(crosscutRad) * alongToUp);
  const bevelAfter = Math.atan((Math.tan(bevelRad) * alongToThrough * Math.cos(crosscutAfter)) / Math.cos(crosscutRad));
  const halfAngle = Math.acos(Math.cos(bevelAfter) * Math.cos(crosscutAfter));
  const ringSumRad = 2 * sides * (halfAngle - halfTurnRad);
  // To the joints the season is a cutting error that all faces share.
  const [outsideGapMm, insideGapMm] = sharedErrorGaps(geometry, bevelAfter - bevelRad, crosscutAfter - crosscutRad);
  const widest = Math.max(outsideGapMm, insideGapMm);
  return {
    bevelDeg: geometry.bevelDeg,
    bevelAfterDeg: bevelAfter / RADIANS_PER_DEGREE,
    crosscutDeg: geometry.crosscutDeg,
    crosscutAfterDeg: crosscutAfter / RADIANS_PER_DEGREE,
    ringSumDeg: ringSumRad / RADIANS_PER_DEGREE,
    jointOpeningMm: ringSumRad < 0 ? widest : 0 - widest,
    outsideGapMm,
    insideGapMm,
    clearOpeningGainMm: clearOpeningGain(geometry, shrinkage),
  };
}

/** The ring gets smaller with its staves, the wood around the opening thinner and shorter. */
function clearOpeningGain(geometry: RingGeometry, shrinkage: StaveShrinkage): number {
  const across = geometry.clearOpeningWideMm - geometry.clearOpeningNarrowMm;
  const wood = geometry.outsideFlatsMm - geometry.clearOpeningWideMm;
  return across * shrinkage.upFace + wood * shrinkage.throughThickness - geometry.outsideFlatsMm * shrinkage.alongRing;
}
