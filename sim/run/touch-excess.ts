/** How far the touch rule is from the contact rule: the same rings closed by both. */

import type { Project } from '../project/document';
import { Moments } from '../statistics/moments';
import { selectQuantile } from '../statistics/quantiles';
import type { RunOptions } from './run-method';
import { shortRun } from './short-run';

export const TOUCH_EXCESS_TRIALS = 1_000;

export interface TouchExcess {
  trials: number;
  /** Worst show gap by touch less that by contact, ring by ring, mm. */
  excessMm: Float64Array;
  meanMm: number;
  p95Mm: number;
}

/** Null where the rule decides nothing: only a ring pulled up all at once may be closed by touch. */
export function touchExcess(
  project: Project,
  methodIndex: number,
  trials = TOUCH_EXCESS_TRIALS,
  options: Pick<RunOptions, 'seed'> = {},
): TouchExcess | null {
  if (project.methods[methodIndex]?.assembly.by !== 'allAtOnce') return null;
  const touch = shortRun(project, methodIndex, trials, { ...options, rule: 'touch' }).showGapMm;
  const contact = shortRun(project, methodIndex, trials, { ...options, rule: 'contact' }).showGapMm;
  const excessMm = touch.map((gap, ring) => gap - contact[ring]!);
  return { trials, excessMm, meanMm: new Moments().add(excessMm).mean, p95Mm: selectQuantile(excessMm, 0.95) };
}
