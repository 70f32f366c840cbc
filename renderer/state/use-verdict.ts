/** What the methods' results come to at the limit that is set, in the words every surface shares. */
import { aheadChance } from '../../sim/decide/chance-ahead';
import type { Project } from '../../sim/project/document';
import type { MethodResult, RingSample } from '../../sim/run/prediction';
import type { Share } from '../../sim/statistics/estimates';
import { type AheadPair, type Recommendation, recommendation } from '../../sim/wording/verdict';
import { resultAtLimit } from './at-limit';
import { type FiguresOnScreen, useFiguresOnScreen } from './figures-on-screen';
import { type MethodOutcome, methodOutcomes, useMethodOutcomes } from './method-outcomes';
import { rememberLastResult } from './remember-last-result';
import { useRun } from './run-store';
import { useShownProject } from './shown-project';
import { useView } from './view-store';

export interface WeighedMethod {
  /** Place of the method in the project. */
  index: number;
  name: string;
  isFresh: boolean;
  /** Whether a longer run than the quick preview stands behind it. */
  isRefined: boolean;
  /** Whether cost and grades were worked out for the limit that is set. */
  isGraded: boolean;
  /** Read at the limit that is set. */
  result: MethodResult;
}

export interface Verdict {
  methods: readonly WeighedMethod[];
  pairs: readonly AheadPair[];
  recommendation: Recommendation;
}

function weighed(outcomes: readonly MethodOutcome[], limitMm: number): WeighedMethod[] {
  return outcomes.flatMap(({ method: { name }, index, outcome, isFresh, isOff }) => {
    if (isOff || !outcome) return [];
    const isGraded = outcome.showLimitMm === limitMm;
    const isRefined = outcome.stage !== 'preview';
    return [{ index, name, isFresh, isRefined, isGraded, result: resultAtLimit(outcome.result, limitMm, name) }];
  });
}

const known = new WeakMap<RingSample, WeakMap<RingSample, Share>>();

/** The pairs do not depend on the limit: while it is dragged, each stands as it was counted. */
function aheadOnce(first: RingSample, second: RingSample): Share {
  const ofFirst = known.get(first) ?? new WeakMap<RingSample, Share>();
  known.set(first, ofFirst);
  const share = ofFirst.get(second) ?? aheadChance(first, second);
  ofFirst.set(second, share);
  return share;
}

/** Every method against every other, each pair once. */
function pairsOf(outcomes: readonly MethodOutcome[]): AheadPair[] {
  const active = outcomes.filter(({ isOff }) => !isOff);
  return active.flatMap((first, i) =>
    active.slice(i + 1).flatMap((second) => {
      if (!first.outcome || !second.outcome) return [];
      const firstAhead = aheadOnce(first.outcome.result.sample, second.outcome.result.sample);
      return [{ first: first.method.name, second: second.method.name, firstAhead }];
    }),
  );
}

function verdictFor(project: Project, outcomes: readonly MethodOutcome[]): Verdict {
  const pairs = pairsOf(outcomes);
  const methods = weighed(outcomes, project.limits.showGapMm);
  const results = methods.map(({ result }) => result);
  return { methods, pairs, recommendation: recommendation(project, results, pairs) };
}

const shownVerdict = rememberLastResult(verdictFor);

export function useVerdict(): Verdict {
  const project = useShownProject();
  const outcomes = useMethodOutcomes();
  return shownVerdict(project, outcomes);
}

const verdictOnScreen = rememberLastResult((held: FiguresOnScreen, switchedOff: readonly string[]) =>
  verdictFor(held.project, methodOutcomes(held.project, held, switchedOff)),
);

/** The same, but an edit that needs new rings does not change it before they are there or late. */
export function useVerdictOnScreen(): Verdict {
  const switchedOff = useView((state) => state.switchedOff);
  return verdictOnScreen(useFiguresOnScreen(), switchedOff);
}

/** The answer once nothing is being worked on any more, for those who listen; empty before. */
export function useSettledSentence(): string {
  const { methods, recommendation } = useVerdictOnScreen();
  const working = useRun((state) => state.work !== null);
  const isSettled = !working && methods.length > 0 && methods.every(({ isFresh }) => isFresh);
  return isSettled ? recommendation.headline : '';
}
