/** Where the gaps of a method come from, in one sentence. */
import type { SourceBudget, SourceEffect } from '../budget/budget';
import { type Display, gapText, OVER_GAP_MM } from './figures';
import { SOURCE_WORDS } from './sources';

/** A second source that takes away at least this much of what the first does is named beside it. */
const NEARLY_AS_MUCH = 0.75;

const gainOf = ({ showGapP95ChangeMm }: SourceEffect): number => -showGapP95ChangeMm.value;

/** The sources whose perfection would narrow the gap for certain, the one that narrows it most first. */
export function tellingSources({ sources }: SourceBudget): SourceEffect[] {
  return sources.filter(({ showGapP95ChangeMm }) => showGapP95ChangeMm.high < 0).sort((a, b) => gainOf(b) - gainOf(a));
}

/** "Most of the gap comes from the tilt setting: were that perfect, 95 of 100 pieces would show no gap over 0.05 mm." */
export function gapOriginSentence(budget: SourceBudget, display: Display): string {
  const now = budget.showGapP95Mm;
  const gap = (mm: number): string => gapText(mm, display);
  if (budget.sources.length === 0) return 'From nowhere: no source of error is above zero.';
  const [first, second] = tellingSources(budget);
  if (first === undefined) {
    const still =
      now > OVER_GAP_MM
        ? `more than 5 of 100 pieces show a gap ${gap(now)}`
        : `95 of 100 pieces show no gap over ${gap(now)}`;
    return `From no single source: ${still}, whichever one of them were perfect.`;
  }
  const without = (effect: SourceEffect): string => under(gap(effect.showGapP95WithoutMm));
  const asItIs = `; as things are, ${now > OVER_GAP_MM ? `the gap is ${gap(now)}` : `${gap(now)}`}.`;
  const { cause } = SOURCE_WORDS[first.source];
  if (second !== undefined && gainOf(second) >= NEARLY_AS_MUCH * gainOf(first)) {
    return (
      `The gap comes above all from ${cause} and from ${SOURCE_WORDS[second.source].cause}: were the first perfect, ` +
      `${without(first)}, were the second ${gap(second.showGapP95WithoutMm)}${asItIs}`
    );
  }
  const lead =
    gainOf(first) >= now / 2
      ? `Most of the gap comes from ${cause}`
      : `More of the gap comes from ${cause} than from anything else`;
  return `${lead}: were that perfect, ${without(first)}${asItIs}`;
}

function under(gap: string): string {
  return gap.startsWith('over')
    ? `more than 5 of 100 pieces would still show a gap ${gap}`
    : `95 of 100 pieces would show no gap over ${gap}`;
}
