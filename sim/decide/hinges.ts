/**
 * What the lead of one method over another hinges on: how large each of its telling sources may become, the others as
 * they are, before the other method gives as many good pieces. Both are tried on the same random numbers.
 */
import { SOURCE_KEYS, type SourceKey, scaledSources, sourceFigure } from '../errors/source-scale';
import type { Project, SourceName } from '../project/document';
import type { RunOptions } from '../run/run-method';
import { pairedYield, type ShortRun, shortRun } from '../run/short-run';
import { accuracySources, lastHolding } from './accuracy-needed';

export const HINGE_TRIALS = 6_000;
/** A source may get this many times worse before it is said that the lead does not hinge on it. */
export const MOST_WORSE = 8;
/** Sources told of; the first are those that cost the lead most when they double. */
const TOLD = 3;

export interface Hinge {
  source: SourceName;
  /** The source's telling figure, as it is and where the lead is lost. */
  key: SourceKey;
  now: number;
  lostAt: number;
}

export interface LeadHinges {
  trials: number;
  /** False when the lead cannot be told from chance on these rings. */
  leads: boolean;
  /** Those that lose the lead before they are `MOST_WORSE` times as large, the nearest first. */
  hinges: Hinge[];
}

const isOfStock = (source: SourceName): boolean => SOURCE_KEYS[source].some((key) => key.startsWith('stock.'));

/**
 * Yields after every source tried. `leader` and `rival` are places in the project's methods.
 *
 * The stock is the same for all methods, so that its sources get worse for the rival too.
 */
export function* leadHinges(
  project: Project,
  leader: number,
  rival: number,
  options: RunOptions = {},
): Generator<void, LeadHinges, void> {
  const trials = options.trials ?? HINGE_TRIALS;
  const run = (of: Project, method: number): ShortRun => shortRun(of, method, trials, options);
  const [leaderNow, rivalNow] = [run(project, leader), run(project, rival)];
  const leads = pairedYield(leaderNow, rivalNow).low > 0;
  if (!leads) return { trials, leads, hinges: [] };
  const lead = (source: SourceName, factor: number): number => {
    const worse = scaledSources(project, leader, new Map([[source, factor]]));
    return run(worse, leader).yield - (isOfStock(source) ? run(worse, rival) : rivalNow).yield;
  };
  const doubled: { source: SourceName; lead: number }[] = [];
  for (const source of accuracySources(project, leader)) {
    doubled.push({ source, lead: lead(source, 2) });
    yield;
  }
  doubled.sort((a, b) => a.lead - b.lead);
  const hinges: (Hinge & { factor: number })[] = [];
  for (const { source } of doubled.slice(0, TOLD)) {
    const key = SOURCE_KEYS[source].find((figure) => sourceFigure(project, leader, figure) !== 0);
    if (key === undefined || lead(source, MOST_WORSE) > 0) continue;
    yield;
    const factor = lastHolding(1, MOST_WORSE, (at) => lead(source, at) > 0);
    const now = sourceFigure(project, leader, key);
    hinges.push({ source, key, now, lostAt: now * factor, factor });
    yield;
  }
  hinges.sort((a, b) => a.factor - b.factor);
  return { trials, leads, hinges: hinges.map(({ factor: _, ...hinge }) => hinge) };
}
