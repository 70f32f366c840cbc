/** The error budget in words: where the gap comes from, and what each source would be worth were it perfect. */
import type { SourceBudget, SourceEffect } from '../budget/budget';
import type { IndexEstimate } from '../budget/sobol';
import type { SourceIndices } from '../budget/source-sensitivity';
import { gapDifferenceText } from './differences';
import { type Display, gapText } from './figures';
import { SOURCE_WORDS } from './sources';
import { percentText, type TextTable } from './tables';

/** "0.62 (0.58 to 0.66)". */
export function indexText({ value, low, high }: IndexEstimate): string {
  const [seen, least, most] = [value, low, high].map((part) => {
    const text = part.toFixed(2);
    return Number(text) === 0 ? '0.00' : text;
  });
  return `${seen} (${least} to ${most})`;
}

/** Below these a source is one of many that hardly matter. */
const LEAST_SHARE = 0.005;
const LEAST_CHANGE_MM = 0.0005;

export interface WeighedSource {
  effect: SourceEffect;
  index: SourceIndices | undefined;
  counts: boolean;
}

/** The source that brings most in all first. */
export function weighedSources({ sources }: SourceBudget, indices: readonly SourceIndices[]): WeighedSource[] {
  const indexOf = new Map(indices.map((index) => [index.source, index]));
  const found = sources.map((effect): WeighedSource => {
    const index = indexOf.get(effect.source);
    const change = Math.abs(effect.showGapP95ChangeMm.value);
    const counts =
      effect.varianceShare >= LEAST_SHARE || change >= LEAST_CHANGE_MM || (index?.total.value ?? 0) >= LEAST_SHARE;
    return { effect, index, counts };
  });
  return found.sort((a, b) => (b.index?.total.value ?? 0) - (a.index?.total.value ?? 0));
}

/** Names the sources that the table leaves out; null when there are none. */
export function leftOutSentence(budget: SourceBudget, indices: readonly SourceIndices[]): string | null {
  const rest = weighedSources(budget, indices).filter(({ counts }) => !counts);
  if (rest.length === 0) return null;
  return `Hardly anything comes from: ${rest.map(({ effect }) => SOURCE_WORDS[effect.source].label.toLowerCase()).join('; ')}.`;
}

/** One row for every source that counts. */
export function sourceTable(
  name: string,
  budget: SourceBudget,
  indices: readonly SourceIndices[],
  display: Display,
): TextTable {
  const rows = weighedSources(budget, indices).filter(({ counts }) => counts);
  return {
    head: [name, 'Share', 'If it were perfect, 95 of 100 under', 'Change', 'Alone', 'In all'],
    rows: rows.map(({ effect, index }) => [
      SOURCE_WORDS[effect.source].label,
      percentText(effect.varianceShare),
      gapText(effect.showGapP95WithoutMm, display, 0.001),
      gapDifferenceText(effect.showGapP95ChangeMm, display),
      index === undefined ? '–' : indexText(index.first),
      index === undefined ? '–' : indexText(index.total),
    ]),
  };
}

/** What the columns of the table are. */
export const SOURCE_TABLE_NOTE = [
  'Share: of the variance of the joints’ openings, worked out without the wood resisting.',
  'Change: what a perfect source does to the gap that 95 of 100 pieces stay under, on the same luck, with its 95 % interval.',
  'Alone, in all: the part of the worst gap’s variance that a source brings by itself, and with all it does together',
  'with others. Estimates near 0 may come out below it.',
].join('\n');
