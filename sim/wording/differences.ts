/** Differences with their intervals, as words and tables show them: every figure with its sign. */

import type { MethodDifferences } from '../decide/differences';
import { MM_PER_INCH, WILL_NOT_CLOSE_MM } from '../geometry/thresholds';
import type { MethodResult } from '../run/prediction';
import type { Share } from '../statistics/estimates';
import type { Difference } from '../statistics/paired';
import { type Display, decimalsFor, lengthText, moneyText, shareWithInterval } from './figures';
import type { TextTable } from './tables';

/** '+0.12', '-3', '0'. */
export function signedText(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const size = Number(text);
  if (size === 0) return text.replace('-', '');
  return size > 0 ? `+${text}` : text;
}

function withInterval({ value, low, high }: Difference, most: number, unit: string): string {
  const decimals = decimalsFor((high - low) / 2, most);
  const [seen, least, greatest] = [value, low, high].map((part) => signedText(part, decimals));
  return `${seen}${unit} (${least} to ${greatest})`;
}

/** "-0.19 mm (-0.20 to -0.18)"; a difference that a ring which does not close has a part in is no number. */
export function gapDifferenceText(difference: Difference, display: Display): string {
  if (Math.abs(difference.value) > WILL_NOT_CLOSE_MM) {
    return `over ${lengthText(WILL_NOT_CLOSE_MM, display)} ${difference.value > 0 ? 'more' : 'less'}`;
  }
  if (display === 'metric') return withInterval(difference, 3, ' mm');
  const { value, low, high } = difference;
  const inches = { value: value / MM_PER_INCH, low: low / MM_PER_INCH, high: high / MM_PER_INCH };
  return withInterval(inches, 4, ' in');
}

/** "+12.3 in 100 (+11.9 to +12.7)". */
export function shareDifferenceText({ value, low, high }: Difference): string {
  return withInterval({ value: 100 * value, low: 100 * low, high: 100 * high }, 1, ' in 100');
}

/** "+4.10 (+3.20 to +5.00)". */
export function costDifferenceText({ value, low, high }: Difference): string {
  const signed = (amount: number) => {
    const text = moneyText(amount, (high - low) / 2);
    return amount > 0 && Number(text.replaceAll(',', '')) !== 0 ? `+${text}` : text;
  };
  return `${signed(value)} (${signed(low)} to ${signed(high)})`;
}

export interface ComparedMethod {
  result: MethodResult;
  /** Chance that of one piece from each method its own is the tightest. */
  bestChance: Share;
  /** This method less the one it is held against; absent for that one itself. */
  differences?: MethodDifferences;
}

/** Every method against one of them, on the same luck, and the chance of being best among all. */
export function differenceTable(against: string, compared: readonly ComparedMethod[], display: Display): TextTable {
  return {
    head: [`Against “${against}”`, 'Good enough', 'Gap, 95 of 100 under', 'Cost of a good piece', 'Tightest of all'],
    rows: compared.map(({ result, bestChance, differences }) => [
      result.prediction.name,
      differences === undefined ? '–' : shareDifferenceText(differences.yield),
      differences === undefined ? '–' : gapDifferenceText(differences.showGapP95Mm, display),
      differences === undefined || differences.cost === null ? '–' : costDifferenceText(differences.cost),
      shareWithInterval(bestChance),
    ]),
  };
}
