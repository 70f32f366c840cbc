/** One ring of a run, looked at joint by joint. */
import { along } from '../closure/ring-maps';
import type { Project } from '../project/document';
import { sortedCopy } from '../statistics/quantiles';
import { BLOCK_TRIALS, finish, trialsInBlock } from './block-loop';
import { drawRings } from './draw-rings';
import type { GradeRing } from './grade';
import { methodPlan } from './plan';
import type { RunOptions } from './run-method';

export interface JointOpening {
  /** Largest opening after pull-up on the outer and the inner side, mm. */
  outerMm: number;
  innerMm: number;
}

export interface SingleRing {
  /** Place in the run, from 0. */
  ring: number;
  closes: boolean;
  /** Dry-fit mouth at the outer and the inner edge, mm; positive = open. */
  mouthOuterMm: number;
  mouthInnerMm: number;
  /** Joint i lies between stave i and stave i + 1. */
  joints: JointOpening[];
}

/**
 * Ring number `ring` of the run that `runMethod` makes with the same options, drawn and closed anew.
 *
 * @throws RangeError when the run has no such ring
 */
export function singleRing(project: Project, methodIndex: number, ring: number, options: RunOptions = {}): SingleRing {
  const trials = options.trials ?? project.run.trials;
  const seed = options.seed ?? project.run.seed;
  if (!Number.isInteger(ring) || ring < 0 || ring >= trials) {
    throw new RangeError(
      `Ring ${ring} is not one of the ${trials} rings simulated. Give a number from 0 to ${trials - 1}.`,
    );
  }
  const plan = methodPlan(project, methodIndex, options);
  const { closer, maps } = plan;
  const { pullUpMm } = plan.method.assembly;
  const block = Math.floor(ring / BLOCK_TRIALS);
  const rings = trialsInBlock(trials, block);
  const wanted = ring - block * BLOCK_TRIALS;
  const counts = { rounds: new Uint8Array(rings), recuts: new Uint8Array(rings) };
  const after = (opening: number) => Math.max(0, opening - pullUpMm);
  let found: SingleRing | undefined;
  const look: GradeRing = (place, outputs, at, rows, row, corners, cornersAt) => {
    if (place !== wanted) return;
    const closes = closer.close(outputs, at, rows, row * 3 * maps.sides, corners, cornersAt);
    const r = outputs.subarray(at, at + 6);
    found = {
      ring,
      closes,
      mouthOuterMm: along(maps.mouthOuter, r),
      mouthInnerMm: along(maps.mouthInner, r),
      joints: Array.from(closer.outer, (outer, j) => ({ outerMm: after(outer), innerMm: after(closer.inner[j]!) })),
    };
  };
  finish(drawRings(plan, seed, block, rings, counts, look));
  return found!;
}

/** The ring of a run whose show gap comes closest to a share p of all rings from the tightest up: 0.5 is a typical one. */
export function ringAtShare(showGapMm: Float64Array, p: number): number {
  const sorted = sortedCopy(showGapMm);
  return showGapMm.indexOf(sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!);
}
