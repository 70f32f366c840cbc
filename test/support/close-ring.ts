/** One ring with known errors, closed the way the engine closes every simulated ring. */
import { ringCloser } from '../../sim/closure/ring-closer';
import { along, misclosureOf, type RingMaps } from '../../sim/closure/ring-maps';
import { DEFAULT_ASSEMBLY } from '../../sim/project/defaults';
import type { Assembly, Rule } from '../../sim/project/document';
import type { StaveErrors } from './exact-chain';
import { faceErrors } from './rings';

export interface ClosedRing {
  mouthOuterMm: number;
  mouthInnerMm: number;
  closes: boolean;
  /** Largest opening of each joint on either side, mm. */
  outerMm: number[];
  innerMm: number[];
}

export function closeRing(
  maps: RingMaps,
  errors: readonly StaveErrors[],
  assembly: Partial<Assembly>,
  rule: Rule,
  rows: Float64Array = new Float64Array(3 * maps.sides),
): ClosedRing {
  const r = misclosureOf(maps, faceErrors(errors));
  const closer = ringCloser(maps, { ...DEFAULT_ASSEMBLY, ...assembly }, rule);
  const closes = closer.close(r, 0, rows, 0, new Float64Array(8), 0);
  return {
    mouthOuterMm: along(maps.mouthOuter, r),
    mouthInnerMm: along(maps.mouthInner, r),
    closes,
    outerMm: [...closer.outer],
    innerMm: [...closer.inner],
  };
}
