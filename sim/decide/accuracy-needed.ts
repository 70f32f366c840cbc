/**
 * How good would each source have to be for a wanted yield? One by one, the others as they are; and a balanced
 * allocation that reaches it with least effort. Every variant is tried on the same random numbers.
 */
import { type IndexedOutcome, sourceSensitivity } from '../budget/source-sensitivity';
import { SOURCE_KEYS, type SourceKey, scaledSources, sourceFigure } from '../errors/source-scale';
import { activeSources, drawList, methodCuts } from '../errors/sources';
import { ringGeometry } from '../geometry/ring';
import { type Project, SOURCE_NAMES, type SourceName } from '../project/document';
import { finish } from '../run/block-loop';
import type { RunOptions } from '../run/run-method';
import { shortRun } from '../run/short-run';

export const ACCURACY_TRIALS = 6_000;

/** A source may get at most this many times worse before it is said to leave room enough. */
export const MOST_FACTOR = 8;
const BISECTIONS = 9;
const SENSITIVITY_SHARE = 0.5;
/** Of the largest source's; one that seems to bring less may have been unlucky, and is trimmed before others are near 0. */
const LEAST_SHARE = 1e-3;
/** A variant that is this far from the wanted yield after a first few rings needs no more of them. */
const FIRST_RINGS = 1_500;
const SURE_ERRORS = 4;

export interface FigureNeeded {
  key: SourceKey;
  now: number;
  /** Null when no value of this source alone would do. */
  needed: number | null;
}

export interface SourceNeeded {
  source: SourceName;
  /** Factor on the source's figures that still gives the wanted yield; null when even a perfect source does not. */
  factor: number | null;
  /** Those of its figures that are not 0. */
  figures: FigureNeeded[];
  /** Yield with this source perfect and the others as they are. */
  yieldIfPerfect: number;
}

export interface BalancedFactor {
  source: SourceName;
  factor: number;
  figures: FigureNeeded[];
}

export interface AccuracyNeeded {
  trials: number;
  wanted: number;
  yieldNow: number;
  sources: SourceNeeded[];
  /** Sources that stand in the way alone: with all others perfect the yield is still short. */
  inTheWay: SourceName[];
  /** Factors that together reach the wanted yield with least effort (1 = leave as it is); null when nothing does. */
  balanced: BalancedFactor[] | null;
}

/** The question that every part of the answer is about. */
export interface AccuracyQuestion {
  /** Share of good pieces, 0…1. */
  wanted: number;
  yieldNow: number;
}

/** Last x in [low, high] with holds(x), holds falling from true at low to false at high; searched on a root scale. */
export function lastHolding(low: number, high: number, holds: (x: number) => boolean): number {
  let [yes, no] = [Math.sqrt(low), Math.sqrt(high)];
  for (let k = 0; k < BISECTIONS; k++) {
    const middle = (yes + no) / 2;
    if (holds(middle * middle)) yes = middle;
    else no = middle;
  }
  return yes * yes;
}

type Factors = ReadonlyMap<SourceName, number>;

const trialsOf = (options: RunOptions): number => options.trials ?? ACCURACY_TRIALS;

function yieldWith(project: Project, methodIndex: number, factors: Factors, options: RunOptions, rings: number) {
  return shortRun(scaledSources(project, methodIndex, factors), methodIndex, rings, options).yield;
}

function reaches(
  project: Project,
  methodIndex: number,
  factors: Factors,
  wanted: number,
  options: RunOptions,
): boolean {
  const trials = trialsOf(options);
  const first = Math.min(FIRST_RINGS, trials);
  const soon = yieldWith(project, methodIndex, factors, options, first);
  const sure = SURE_ERRORS * Math.sqrt((wanted * (1 - wanted)) / first);
  if (first === trials || Math.abs(soon - wanted) > sure) return soon >= wanted;
  return yieldWith(project, methodIndex, factors, options, trials) >= wanted;
}

function figuresNeeded(
  project: Project,
  methodIndex: number,
  source: SourceName,
  factor: number | null,
): FigureNeeded[] {
  return SOURCE_KEYS[source]
    .map((key) => ({ key, now: sourceFigure(project, methodIndex, key) }))
    .filter(({ now }) => now !== 0)
    .map(({ key, now }) => ({ key, now, needed: factor === null ? null : now * factor }));
}

/** The sources that an answer has a line for. */
export function accuracySources(project: Project, methodIndex: number): SourceName[] {
  const method = project.methods[methodIndex]!;
  const geometry = ringGeometry(project.piece);
  const active = activeSources(drawList(project, method, geometry, methodCuts(project, method, geometry)));
  return SOURCE_NAMES.filter((source) => active.has(source));
}

export function yieldAsItIs(project: Project, methodIndex: number, options: RunOptions = {}): number {
  return yieldWith(project, methodIndex, new Map(), options, trialsOf(options));
}

export interface SourceAnswer {
  needed: SourceNeeded;
  inTheWay: boolean;
}

/** What one source would have to be, the others as they are. */
export function sourceNeeded(
  project: Project,
  methodIndex: number,
  source: SourceName,
  { wanted, yieldNow }: AccuracyQuestion,
  options: RunOptions = {},
): SourceAnswer {
  const holds = (factor: number) => reaches(project, methodIndex, new Map([[source, factor]]), wanted, options);
  const yieldIfPerfect = yieldWith(project, methodIndex, new Map([[source, 0]]), options, trialsOf(options));
  let factor: number | null = null;
  if (yieldNow >= wanted) factor = holds(MOST_FACTOR) ? MOST_FACTOR : lastHolding(1, MOST_FACTOR, holds);
  else if (yieldIfPerfect >= wanted) factor = lastHolding(0, 1, holds);
  const others = accuracySources(project, methodIndex).filter((other) => other !== source);
  const othersPerfect = new Map(others.map((other) => [other, 0]));
  const figures = figuresNeeded(project, methodIndex, source, factor);
  return {
    needed: { source, factor, figures, yieldIfPerfect },
    inTheWay: yieldNow < wanted && !reaches(project, methodIndex, othersPerfect, wanted, options),
  };
}

/**
 * Effort taken as Σ ln(1/factor) against a variance Σ share·factor²: least effort trims the largest contributions to
 * one common height (the reverse of water-filling), which leaves a single number to find. A source's share is its total
 * index on whether a piece is good, so that hidden gaps and the insert count as they do for the yield.
 */
export function balancedFactors(
  project: Project,
  methodIndex: number,
  { wanted, yieldNow }: AccuracyQuestion,
  options: RunOptions = {},
): BalancedFactor[] | null {
  const sources = accuracySources(project, methodIndex);
  const holds = (factors: Factors) => reaches(project, methodIndex, factors, wanted, options);
  const balanced = (factors: Factors) =>
    [...factors].map(([source, factor]) => {
      return { source, factor, figures: figuresNeeded(project, methodIndex, source, factor) };
    });
  if (yieldNow >= wanted) return balanced(new Map(sources.map((source) => [source, 1])));
  if (!holds(new Map(sources.map((source) => [source, 0])))) return null;
  const trials = Math.ceil(trialsOf(options) * SENSITIVITY_SHARE);
  const indicesOf = (outcome: IndexedOutcome) =>
    finish(sourceSensitivity(project, methodIndex, { ...options, trials }, outcome));
  const good = indicesOf('good');
  // Where no piece is good at all, only the gaps can tell which source matters.
  const indices = good.some(({ total }) => total.value > 0) ? good : indicesOf('showGapMm');
  const most = Math.max(...indices.map(({ total }) => total.value), Number.MIN_VALUE);
  const share = new Map(indices.map(({ source, total }) => [source, Math.max(total.value, LEAST_SHARE * most)]));
  const at = (height: number) =>
    new Map(sources.map((source) => [source, Math.min(1, Math.sqrt(height / share.get(source)!))]));
  return balanced(at(lastHolding(0, most, (height) => holds(at(height)))));
}

/** The whole answer from its parts. */
export function accuracyAnswer(
  question: AccuracyQuestion,
  answers: readonly SourceAnswer[],
  balanced: BalancedFactor[] | null,
  options: RunOptions = {},
): AccuracyNeeded {
  return {
    trials: trialsOf(options),
    ...question,
    sources: answers.map(({ needed }) => needed),
    inTheWay: answers.filter(({ inTheWay }) => inTheWay).map(({ needed }) => needed.source),
    balanced,
  };
}
