/** The method and the ring that the page of joints looks at. */
import { useMemo } from 'react';
import type { Method } from '../../../sim/project/document';
import type { MethodResult } from '../../../sim/run/prediction';
import { ringAtShare, type SingleRing } from '../../../sim/run/single-ring';
import { countText } from '../../../sim/wording/figures';
import { type RingChoice, useJointsView } from '../../state/joints-view';
import { useMethodOutcomes } from '../../state/method-outcomes';
import { methodLookedAt } from '../../state/method-shown';
import { type QuestionOutcome, useQuestion } from '../../state/use-question';

export interface LookedAt {
  /** Place of the method in the project. */
  index: number;
  method: Method;
  /** null before anything was simulated. */
  result: MethodResult | null;
  isFresh: boolean;
  /** Whether all rings that were asked for are there. */
  isWhole: boolean;
  /** Why it could not be simulated. */
  failure: string | null;
}

/** As the page shows it. */
export function useLookedAt(): LookedAt {
  const wanted = useJointsView((view) => view.lookedAtMethod);
  const outcomes = useMethodOutcomes();
  const found = methodLookedAt(outcomes, wanted);
  if (!found) throw new Error('The project has no method');
  const { method, index, outcome, isFresh, failure } = found;
  return {
    index,
    method,
    result: outcome?.result ?? null,
    isFresh,
    isWhole: isFresh && outcome?.stage === 'full',
    failure,
  };
}

/** The share of rings that are tighter than the one that stands for the choice. */
const SHARE_OF: Record<Exclude<RingChoice, 'number'>, number> = { typical: 0.5, good: 0.05, bad: 0.95 };

export interface ShownRing {
  outcome: QuestionOutcome<SingleRing>;
  /** Why there is no ring of the number given. */
  problem: string | undefined;
}

/** Once all rings are there, the one chosen; until then the one that was shown before. */
export function useShownRing({ index, result, isWhole }: LookedAt): ShownRing {
  const choice = useJointsView((view) => view.ringChoice);
  const number = useJointsView((view) => view.ringNumber);
  const count = result?.prediction.trials ?? 0;
  const isThere = Number.isInteger(number) && number >= 1 && number <= count;
  const ring = useMemo(() => {
    if (!isWhole || !result) return null;
    if (choice !== 'number') return ringAtShare(result.byRing.showGapMm, SHARE_OF[choice]);
    return isThere ? number - 1 : null;
  }, [isWhole, result, choice, number, isThere]);
  const outcome = useQuestion(ring === null ? null : { kind: 'ring', ring }, index);
  const problem =
    choice === 'number' && count > 0 && !isThere
      ? `Ring ${countText(number)} is not one of the ${countText(count)} simulated. Give a whole number from 1 to ${countText(count)}.`
      : undefined;
  return { outcome, problem };
}
