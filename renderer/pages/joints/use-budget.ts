/** The error budget of one method: from few rings at first, so that there is an answer soon, then from as many as it takes. */
import { BUDGET_TRIALS } from '../../../sim/budget/budget';
import type { BudgetAnswer } from '../../../sim/questions/questions';
import { type QuestionOutcome, useQuestion } from '../../state/use-question';

const FIRST_RINGS = 3_000;

export function useBudget(method: number): QuestionOutcome<BudgetAnswer> {
  const first = useQuestion({ kind: 'budget', rings: FIRST_RINGS }, method);
  const whole = useQuestion(first.isFresh ? { kind: 'budget', rings: BUDGET_TRIALS } : null, method);
  if (!first.isFresh) return first;
  return whole.isFresh ? whole : { ...whole, answer: first.answer, isFresh: true };
}
