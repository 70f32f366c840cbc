/**
 * The error sources of one method as a list of independent elementary draws, each with its first-order effect on the
 * face errors (index into the vector of 5N face errors, see `ring-maps`). Radians and millimetres.
 */
import type { SourceName } from '../project/document';

/** A **shared** draw is made once per set-up; a **per-cut** one anew for every cut or stave. */
export type Stage = 'shared' | 'perCut';

export interface Effects {
  index: number[];
  weight: number[];
}

/** One standard normal, or one number uniform on (−1, 1), and what it adds to the face errors. */
export interface Draw extends Effects {
  source: SourceName;
  stage: Stage;
  shape: 'normal' | 'uniform';
}

/** A known error: a mean. `aim` is deliberate and belongs to no source. */
export interface Offset extends Effects {
  source: SourceName | 'aim';
  stage: Stage;
}

/** Something that happens now and then: with `chance` it adds an exponential with this `mean` times each weight. */
export interface RareDraw extends Effects {
  source: 'chips';
  chance: number;
  mean: number;
}

/** Row offsets one cut leaves on the joints: index row·N + joint (row 0 bottom, 1 middle, 2 top). */
export interface CutRows {
  /** For a mark in the bottom, middle or top row of the cut. */
  rows: readonly [Effects, Effects, Effects];
}

export interface DrawList {
  sides: number;
  draws: Draw[];
  offsets: Offset[];
  rare: RareDraw[];
  cutRows: CutRows[];
  /** Standard deviation of a cut's middle row, mm. */
  bulgeMm: number;
  snag: { chance: number; meanMm: number; recutAboveMm: number };
  /** Standard deviation of each corner of the two closing joints of two halves, mm. */
  truingMm: number;
}

/** Collects draws, leaving out those that can do nothing. */
export class DrawCollector {
  readonly draws: Draw[] = [];
  readonly offsets: Offset[] = [];
  readonly rare: RareDraw[] = [];

  normal(source: SourceName, stage: Stage, effects: Effects): void {
    if (someEffect(effects)) this.draws.push({ source, stage, shape: 'normal', ...effects });
  }

  uniform(source: SourceName, stage: Stage, effects: Effects): void {
    if (someEffect(effects)) this.draws.push({ source, stage, shape: 'uniform', ...effects });
  }

  offset(source: SourceName | 'aim', stage: Stage, effects: Effects): void {
    if (someEffect(effects)) this.offsets.push({ source, stage, ...effects });
  }
}

function someEffect(effects: Effects): boolean {
  return effects.weight.some((w) => w !== 0);
}
