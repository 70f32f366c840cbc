/** What a block of simulated rings gives back. */
import type { MethodPlan } from './plan';

/** Flat arrays only, so that a worker can hand it over without copying. One number a ring unless it says otherwise. */
export interface BlockResult {
  block: number;
  rings: number;
  mouthMm: Float64Array;
  /** Of a ring that will not close these, and those of its joints, are over 2 mm whatever it shows. */
  showGapMm: Float64Array;
  hiddenGapMm: Float64Array;
  /** Twice the smallest clear half-opening; empty when sizes are not followed. */
  clearOpeningMm: Float64Array;
  outOfRoundMm: Float64Array;
  /** How far a stave steps out past its neighbour at most; empty when sizes are not followed. */
  stepMm: Float64Array;
  /** Only for two halves: wood that truing takes off an end face. */
  truingMm: Float64Array;
  /** Tilt setting error after the test cuts, radians; empty without test cuts. */
  tiltRad: Float64Array;
  grade: Uint8Array;
  closes: Uint8Array;
  insertFits: Uint8Array;
  /** All but the show limit is met. */
  otherwiseGood: Uint8Array;
  rounds: Uint8Array;
  recuts: Uint8Array;
  /** The widest show gaps of every joint, joint after joint, and how many of each; empty when they are not asked for. */
  jointGapsMm: Float64Array;
  jointGapCounts: Uint32Array;
}

export function emptyResult(plan: MethodPlan, block: number, rings: number): BlockResult {
  const sizes = plan.sizes ? rings : 0;
  return {
    block,
    rings,
    mouthMm: new Float64Array(rings),
    showGapMm: new Float64Array(rings),
    hiddenGapMm: new Float64Array(rings),
    clearOpeningMm: new Float64Array(sizes),
    outOfRoundMm: new Float64Array(sizes),
    stepMm: new Float64Array(sizes),
    truingMm: new Float64Array(plan.method.assembly.by === 'twoHalves' ? rings : 0),
    tiltRad: new Float64Array(plan.test ? rings : 0),
    grade: new Uint8Array(rings),
    closes: new Uint8Array(rings),
    insertFits: new Uint8Array(rings),
    otherwiseGood: new Uint8Array(rings),
    rounds: new Uint8Array(rings),
    recuts: new Uint8Array(rings),
    jointGapsMm: new Float64Array(0),
    jointGapCounts: new Uint32Array(0),
  };
}
