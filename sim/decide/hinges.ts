/**
 * What the lead of one method over another hinges on: how large each of its telling sources may become, the others as
 * they are, before the other method gives as many good pieces. Both are tried on the same random numbers.
 */
import { SOURCE_KEYS, type SourceKey, scaledSources, sourceFigure } from '../errors/source-scale';
import type { Project, SourceName } from '../project/document';
import type { RunOptions } from '../run/run-method';
import { pairedYield, shortRun } from '../run/short-run';
import { lastHolding } from './accuracy-needed';

export const HINGE_TRIALS = 6_000;
/** A source may get this many times worse before it is said that the lead does not hinge on it. */
export const MOST_WORSE = 8;
/** Sources told of; the first are those that cost the lead most when they double. */
export const HINGES_TOLD = 3;

export interface Hinge {
  source: SourceName;
  /** The source's telling figure, as it is and where the lead is lost. */
  key: SourceKey;
  now: number;
  lostAt: number;
}

/** With how many times as large the source is where the lead is lost. */
export type FoundHinge = Hinge & { factor: number };

export interface LeadHinges {
  trials: number;
  /** False when the lead cannot be told from chance on these rings. */
  leads: boolean;
  /** Those that lose the lead before they are `MOST_WORSE` times as large, the nearest first. */
  hinges: Hinge[];
}

const isOfStock = (source: SourceName): boolean => SOURCE_KEYS[source].some((key) => key.startsWith('stock.'));

/** Two methods by their places in the project. */
export interface LeadPair {
  leader: number;
  rival: number;
}

export interface LeadNow {
  trials: number;
  /** False when the lead cannot be told from chance on these rings. */
  leads: boolean;
  rivalYield: number;
}

export function leadNow(project: Project, { leader, rival }: LeadPair, options: RunOptions = {}): LeadNow {
  const trials = options.trials ?? HINGE_TRIALS;
  const [first, second] = [leader, rival].map((method) => shortRun(project, method, trials, options));
  return { trials, leads: pairedYield(first!, second!).low > 0, rivalYield: second!.yield };
}

/**
 * The lead with one of the leader's sources so many times as large. The stock is the same for all methods, so that its
 * sources get worse for the rival too.
 */
export function leadWith(
  project: Project,
  { leader, rival }: LeadPair,
  source: SourceName,
  factor: number,
  { rivalYield }: LeadNow,
  options: RunOptions = {},
): number {
  const trials = options.trials ?? HINGE_TRIALS;
  const worse = scaledSources(project, leader, new Map([[source, factor]]));
  const yieldOf = (method: number): number => shortRun(worse, method, trials, options).yield;
  return yieldOf(leader) - (isOfStock(source) ? yieldOf(rival) : rivalYield);
}

/** Where the lead is lost as one source gets worse; null when it is not lost before `MOST_WORSE` times its size. */
export function hingeOf(
  project: Project,
  pair: LeadPair,
  source: SourceName,
  now: LeadNow,
  options: RunOptions = {},
): FoundHinge | null {
  const isAhead = (factor: number): boolean => leadWith(project, pair, source, factor, now, options) > 0;
  const key = SOURCE_KEYS[source].find((figure) => sourceFigure(project, pair.leader, figure) !== 0);
  if (key === undefined || isAhead(MOST_WORSE)) return null;
  const factor = lastHolding(1, MOST_WORSE, isAhead);
  const size = sourceFigure(project, pair.leader, key);
  return { source, key, now: size, lostAt: size * factor, factor };
}

/** The whole answer from its parts. */
export function leadHingesOf({ trials, leads }: LeadNow, found: readonly (FoundHinge | null)[]): LeadHinges {
  const hinges = found.filter((hinge) => hinge !== null).sort((a, b) => a.factor - b.factor);
  return { trials, leads, hinges: hinges.map(({ factor: _, ...hinge }) => hinge) };
}
