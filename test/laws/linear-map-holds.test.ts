/** How far the first-order maps hold against the closure solved exactly, ring by ring. */
import { describe, expect, test } from 'vitest';
import { contactSolver } from '../../sim/closure/contact';
import { jointGive, lastJoints } from '../../sim/closure/joint-give';
import { misclosureOf, type RingMaps, ringMaps } from '../../sim/closure/ring-maps';
import { RADIANS_PER_DEGREE } from '../../sim/geometry/ring';
import { stream } from '../../sim/random/streams';
import { misclosureAngle, type StaveErrors } from '../support/exact-chain';
import { closeExactly } from '../support/exact-closure';
import { faceErrors, geometryOf, type RingSizes, randomErrors, sameForAll, withOpening } from '../support/rings';
import { slidesFor } from '../support/slides-for';

interface Sample {
  ring: RingSizes;
  maps: RingMaps;
  errors: StaveErrors[];
}

/** A ring of 3 to 40 staves whose shared errors miss up to 2.5°, with 0.1° and 0.2 mm at random on top. */
function sampleRing(index: number, slopeOf: (between: (low: number, high: number) => number) => number): Sample {
  const generator = stream(91, 'exact closure', index);
  const between = (low: number, high: number) => low + (high - low) * generator.uniform();
  const symmetric = () => between(-1, 1);
  const sides = 3 + Math.floor(between(0, 38));
  const ring = withOpening({
    sides,
    slopeDeg: slopeOf(between),
    midWidthMm: between(40, 160),
    heightMm: between(40, 250),
    thicknessMm: between(8, 25),
  });
  // 2N faces share the angle that is missed; the swing's part counts on slopes, the tilt's on upright rings.
  const bevelDeg = (2.5 * symmetric()) / (2 * sides);
  const crosscutDeg = (2.5 * symmetric()) / (2 * sides);
  const shared = sameForAll(sides, {
    bevelRightDeg: bevelDeg,
    bevelLeftDeg: bevelDeg,
    crosscutRightDeg: crosscutDeg,
    crosscutLeftDeg: crosscutDeg,
  });
  const maps = ringMaps(geometryOf(ring));
  const missedDeg = misclosureAngle(maps, misclosureOf(maps, faceErrors(shared))) / RADIANS_PER_DEGREE;
  const share = Math.min(1, 2.5 / missedDeg);
  const errors = randomErrors(sides, symmetric, 0.1, 0.2).map((stave, i) => ({
    bevelRight: stave.bevelRight + share * shared[i]!.bevelRight,
    bevelLeft: stave.bevelLeft + share * shared[i]!.bevelLeft,
    crosscutRight: stave.crosscutRight + share * shared[i]!.crosscutRight,
    crosscutLeft: stave.crosscutLeft + share * shared[i]!.crosscutLeft,
    width: stave.width,
  }));
  return { ring, maps, errors };
}

/** Largest opening and largest slide by the first-order maps, ends flush, mm. */
function closeLinearly({ maps, errors }: Sample, freeJoints: number): { worstMm: number; slideMm: number } {
  const free = lastJoints(maps.sides, freeJoints);
  const solver = contactSolver(jointGive(maps, free, 'flush'));
  expect(solver.solve(misclosureOf(maps, faceErrors(errors)), 0, new Float64Array(3 * maps.sides), 0)).toBe(true);
  let [worstMm, slideMm] = [0, 0];
  free.forEach((joint, f) => {
    const [a, b, c] = solver.openings.subarray(3 * f, 3 * f + 3);
    const [, up, through] = slidesFor(solver.give, joint, solver.lambda);
    worstMm = Math.max(worstMm, a! + Math.abs(b!) + Math.abs(c!));
    slideMm = Math.max(slideMm, Math.abs(up), Math.abs(through));
  });
  return { worstMm, slideMm };
}

interface Difference {
  ring: RingSizes;
  linearMm: number;
  exactMm: number;
  offMm: number;
}

function compare(sample: Sample, freeJoints: number): Difference {
  const { ring, maps, errors } = sample;
  const linearMm = closeLinearly(sample, freeJoints).worstMm;
  const exact = closeExactly(maps, errors, lastJoints(ring.sides, freeJoints), 'flush');
  expect(exact.leftMm).toBeLessThan(1e-9);
  return { ring, linearMm, exactMm: exact.worstMm, offMm: Math.abs(linearMm - exact.worstMm) };
}

describe('against the closure solved exactly, the first-order maps hold', () => {
  const upToSixty = Array.from({ length: 91 }, (_, index) =>
    sampleRing(index, (between) => (index % 5 === 0 ? 0 : index % 5 === 1 ? 90 : between(0, 60))),
  );
  const nearlyFlat = Array.from({ length: 40 }, (_, index) => sampleRing(500 + index, (between) => between(60, 88)));

  test('for upright and splayed rings and flat frames pulled up all at once: within 2 %, or within 0.004 mm', () => {
    const compared = upToSixty.map((sample) => compare(sample, sample.ring.sides));
    expect(compared.filter(({ offMm, exactMm }) => offMm > Math.max(0.02 * exactMm, 0.004))).toEqual([]);
  });

  // A shallow cone lacks little of a full turn, 360°·(1 − sin s); errors that miss as much bend it noticeably.
  test('less well for cones that are nearly flat: within 20 %, or within 0.004 mm', () => {
    const compared = nearlyFlat.map((sample) => compare(sample, sample.ring.sides));
    expect(compared.filter(({ offMm, exactMm }) => offMm > Math.max(0.2 * exactMm, 0.004))).toEqual([]);
    expect(compared.filter(({ offMm, exactMm }) => offMm > Math.max(0.02 * exactMm, 0.004))).not.toEqual([]);
  });

  test('for rings glued one by one: within 9 %, as long as gaps and slides stay under 1 mm', () => {
    const judged = upToSixty.filter((sample) => {
      const { worstMm, slideMm } = closeLinearly(sample, 3);
      return worstMm < 1 && slideMm < 1;
    });
    expect(judged.length).toBeGreaterThan(20);
    const compared = judged.map((sample) => compare(sample, 3));
    expect(compared.filter(({ offMm, exactMm }) => offMm > Math.max(0.09 * exactMm, 0.004))).toEqual([]);
  });
});
