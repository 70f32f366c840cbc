/** What the recommendation hinges on: how large an error may become before the next best method catches up. */
import type { MethodResult } from '../../../sim/run/prediction';
import { hingeSentence } from '../../../sim/wording/hinges';
import { rankedByMerit } from '../../../sim/wording/verdict';
import { QuestionMark } from '../../charts/question-panel';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { useDocument } from '../../state/document-store';
import { useQuestion } from '../../state/use-question';
import type { WeighedMethod } from '../../state/use-verdict';

/** The places of the best method and the next; null while they cannot be told apart, or nothing is good. */
function leaderAndRival(methods: readonly WeighedMethod[]): [WeighedMethod, WeighedMethod] | null {
  const weighedOf = (result: MethodResult | undefined) => methods.find((method) => method.result === result);
  const [first, second] = rankedByMerit(methods.map(({ result }) => result));
  const [leader, rival] = [weighedOf(first), weighedOf(second)];
  if (!leader || !rival) return null;
  return leader.result.prediction.yield.low > rival.result.prediction.yield.high ? [leader, rival] : null;
}

export function LeadHinges({ methods }: { methods: readonly WeighedMethod[] }) {
  const display = useDocument((state) => state.project.display);
  const pair = leaderAndRival(methods);
  const outcome = useQuestion(pair && { kind: 'hinges', rival: pair[1].index }, pair?.[0].index ?? 0);
  if (pair === null) return null;
  const [leader, rival] = pair;
  return (
    <div className="lead-hinges">
      <h3>What it hinges on</h3>
      {/* An older answer may be about another rival, so it is not shown. */}
      {outcome.answer !== null && outcome.isFresh && (
        <p>{lengthsOnOneLine(hingeSentence(leader.name, rival.name, outcome.answer, display))}</p>
      )}
      <QuestionMark outcome={outcome} />
    </div>
  );
}
