/**
 * Eight rings with explicit errors and how they close, computed by an independent program before the engine was written
 * (derived). Lengths mm, angles degrees; joint i lies between stave i and stave i + 1; pull-up 0.
 */
import type { Ends } from '../../sim/project/document';
import facts from './ring-facts.json';
import type { StaveErrorsDeg } from './rings';

export interface JointGaps {
  outerMm: number[];
  innerMm: number[];
}

export interface RingFact {
  sides: number;
  slopeDeg: number;
  staveWidthMidMm: number;
  heightMm: number;
  thicknessMm: number;
  errors: StaveErrorsDeg[];
  jointRowOffsetMm: { bottom: number; middle: number; top: number }[];
  results: {
    ends: Ends;
    mouthOuterMm: number;
    allAtOnceTouch: JointGaps;
    allAtOnceContact: JointGaps;
    oneByOne3Contact: JointGaps;
    oneByOne2Contact: JointGaps;
  }[];
}

export const ringFacts: RingFact[] = facts.rings.map((ring) => ({
  ...ring,
  results: ring.results.map((result) => ({ ...result, ends: result.ends === 'flush' ? 'flush' : 'free' })),
}));
