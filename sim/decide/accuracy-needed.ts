/**
 * How good would each source have to be for a wanted yield? One by one, the others as they are; and a balanced
 * allocation that reaches it with least effort. Every variant is tried on the same random numbers.
 */
import { sourceSensitivity } from '../budget/source-sensitivity';
import { SOURCE_KEYS, type SourceKey, scaledSources, sourceFigure } from '../errors/source-scale';
import { activeSources, drawList, methodCuts } from '../errors/sources';
import { ringGeometry } from '../geometry/ring';
import { type Project, SOURCE_NAMES, type SourceName } from '../project/document';
import { finish } from '../run/block-loop';
import type { RunOptions } from '../run/run-method';
import { shortRun } from './short-run';

export const ACCURACY_TRIALS = 6_000;

/** A source may get at most this many times worse before it is said to leave room enough. */
const MOST_FACTOR = 8;
const BISECTIONS = 8;
const SENSITIVITY_SHARE = 0.5;

export interface FigureNeeded {
  key: SourceKey;
  now: number;
  needed: number;
}

export interface SourceNeeded {
  source: SourceName;
  /** Factor on the source's figures that still gives the wanted yield; null when even a perfect source does not. */
  factor: number | null;
  figures: FigureNeeded[];
  /** Yield with this source perfect and the others as they are. */
  yieldIfPerfect: number;
}

export interface AccuracyNeeded {
  wanted: number;
  yieldNow: number;
  sources: SourceNeeded[];
  /** Sources that stand in the way alone: with all others perfect the yield is still short. */
  inTheWay: SourceName[];
  /** Factors that together reach the wanted yield with least effort (1 = leave as it is); null when nothing does. */
  balanced: { source: SourceName; factor: number; figures: FigureNeeded[] }[] | null;
}

/** Largest x in [low, high] with holds(x), holds falling from true at low to false at high; to a ratio of about 1 %. */
function lastHolding(low: number, high: number, holds: (x: number) => boolean): number {
  let [yes, no] = [low, high];
  for (let k = 0; k < BISECTIONS; k++) {
    const middle = (yes + no) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** Yields the number of variants tried. `wanted` is a share of good pieces, 0…1. */
export function* accuracyNeeded(
  project: Project,
  methodIndex: number,
  wanted: number,
  options: RunOptions = {},
): Generator<number, AccuracyNeeded, void> {
  const trials = options.trials ?? ACCURACY_TRIALS;
  const method = project.methods[methodIndex]!;
  const geometry = ringGeometry(project.piece);
  const active = activeSources(drawList(project, method, geometry, methodCuts(project, method, geometry)));
  const sources = SOURCE_NAMES.filter((source) => active.has(source));
  let tried = 0;
  const yieldWith = (factors: ReadonlyMap<SourceName, number>): number => {
    tried++;
    return shortRun(scaledSources(project, methodIndex, factors), methodIndex, trials, options).yield;
  };
  const figures = (source: SourceName, factor: number): FigureNeeded[] =>
    SOURCE_KEYS[source]
      .map((key) => ({ key, now: sourceFigure(project, methodIndex, key) }))
      .filter(({ now }) => now !== 0)
      .map(({ key, now }) => ({ key, now, needed: now * factor }));

  const yieldNow = yieldWith(new Map());
  const needed: SourceNeeded[] = [];
  const inTheWay: SourceName[] = [];
  for (const source of sources) {
    const holds = (factor: number) => yieldWith(new Map([[source, factor]])) >= wanted;
    const yieldIfPerfect = yieldWith(new Map([[source, 0]]));
    let factor: number | null = null;
    if (yieldNow >= wanted) factor = holds(MOST_FACTOR) ? MOST_FACTOR : lastHolding(1, MOST_FACTOR, holds);
    else if (yieldIfPerfect >= wanted) factor = lastHolding(0, 1, holds);
    needed.push({ source, factor, figures: factor === null ? [] : figures(source, factor), yieldIfPerfect });
    yield tried;
    if (yieldNow < wanted) {
      const allOthers = new Map(sources.filter((other) => other !== source).map((other) => [other, 0]));
      if (yieldWith(allOthers) < wanted) inTheWay.push(source);
      yield tried;
    }
    if (options.shouldStop?.()) break;
  }
  const balanced = yield* balance();
  return { wanted, yieldNow, sources: needed, inTheWay, balanced };

  /**
   * Effort taken as Σ ln(1/factor) against a variance Σ share·factor²: least effort trims the largest contributions to
   * one common height (the reverse of water-filling), which leaves a single number to find.
   */
  function* balance(): Generator<number, AccuracyNeeded['balanced'], void> {
    const trimmed = (factors: Map<SourceName, number>) =>
      [...factors].map(([source, factor]) => ({ source, factor, figures: figures(source, factor) }));
    if (yieldNow >= wanted) return trimmed(new Map(sources.map((source) => [source, 1])));
    if (yieldWith(new Map(sources.map((source) => [source, 0]))) < wanted) return null;
    const shares = finish(
      sourceSensitivity(project, methodIndex, { ...options, trials: Math.ceil(trials * SENSITIVITY_SHARE) }),
    );
    yield tried;
    const share = new Map(shares.map(({ source, total }) => [source, Math.max(total.value, 1e-9)]));
    const most = Math.max(...share.values());
    const at = (height: number): Map<SourceName, number> =>
      new Map(sources.map((source) => [source, Math.min(1, Math.sqrt(height / share.get(source)!))]));
    // Searched on a root scale, where factors move evenly.
    const root = lastHolding(0, 1, (x) => yieldWith(at(most * x * x)) >= wanted);
    yield tried;
    return trimmed(at(most * root * root));
  }
}
