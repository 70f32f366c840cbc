/** Where the gaps of a method come from, in one sentence. */
import type { SourceBudget, SourceEffect } from '../budget/budget';
import { comparedGaps, type Display } from './figures';
import { SOURCE_WORDS } from './sources';

/** A second source that would narrow the gap by at least this part of what the first does is named too. */
const NEARLY_AS_MUCH = 0.75;

const gainOf = ({ showGapP95ChangeMm }: SourceEffect): number => -showGapP95ChangeMm.value;

/** The sources whose perfection would narrow the gap for certain, the one that narrows it most first. */
export function tellingSources({ sources }: SourceBudget): SourceEffect[] {
  return sources.filter(({ showGapP95ChangeMm }) => showGapP95ChangeMm.high < 0).sort((a, b) => gainOf(b) - gainOf(a));
}

/** Whether the gap would be less than half without the source. */
export function isMostOfTheGap({ showGapP95Mm }: SourceBudget, source: SourceEffect): boolean {
  return gainOf(source) >= showGapP95Mm / 2;
}

/** "Mostly from the tilt setting: were that perfect, 95 of 100 pieces would show no gap over 0.05 mm." */
export function gapOriginSentence(budget: SourceBudget, display: Display): string {
  if (budget.sources.length === 0) return 'From nowhere: no source of error is above zero.';
  const [first] = tellingSources(budget);
  if (first === undefined)
    return 'From no single source: none of them, made perfect, would narrow the gap for certain.';
  const [without] = comparedGaps(first.showGapP95WithoutMm, budget.showGapP95Mm, display);
  const wouldBe = without.startsWith('over')
    ? `more than 5 of 100 pieces would still show a gap ${without}`
    : `95 of 100 pieces would show no gap over ${without}`;
  const most = isMostOfTheGap(budget, first) ? 'Mostly' : 'First of all';
  return `${most} from ${SOURCE_WORDS[first.source].cause}: were that perfect, ${wouldBe}.`;
}

/** What the sentence above is to be held against, and the source close behind the one it names. */
export function gapNowSentence(budget: SourceBudget, display: Display): string {
  const [first, second] = tellingSources(budget);
  const nowMm = budget.showGapP95Mm;
  const [now] = comparedGaps(nowMm, first?.showGapP95WithoutMm ?? nowMm, display);
  const stands = now.startsWith('over')
    ? `As things are, more than 5 of 100 pieces show a gap ${now}.`
    : `As things are, 95 of 100 pieces show no gap over ${now}.`;
  if (!first || !second || gainOf(second) < NEARLY_AS_MUCH * gainOf(first)) return stands;
  return `${stands} Nearly as much comes from ${SOURCE_WORDS[second.source].cause}.`;
}
