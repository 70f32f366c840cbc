/** Cost, yield and the chance that testing pays, over the number of test rounds. */
import type { RoundsValue } from '../../../sim/decide/test-value';
import { testValueFigures } from '../../../sim/export/test-figures';
import type { CostSummary } from '../../../sim/run/prediction';
import type { Share } from '../../../sim/statistics/estimates';
import { moneyText } from '../../../sim/wording/figures';
import { testValueTable } from '../../../sim/wording/test-value';
import { evenScale } from '../../charts/even-scale';
import { QuestionPanel } from '../../charts/question-panel';
import { RoundsChart, type RoundsFigure, type RoundsPoint } from '../../charts/rounds-chart';
import { TextTableView } from '../../charts/text-table';
import type { Worth } from './use-test-cuts';

/** Parts of the greatest cost that figures in the picture tell. */
const FINENESS = 100;

const SHARES = { min: 0, max: 1, ticks: [0, 0.25, 0.5, 0.75, 1] };

const ofHundred = (share: number): string => `${Number((100 * share).toFixed(share > 0.98 || share < 0.02 ? 1 : 0))}`;

function shares(name: string, rounds: readonly RoundsValue[], shareOf: (round: RoundsValue) => Share): RoundsFigure {
  const points = rounds.map((round): RoundsPoint => {
    const share = shareOf(round);
    return { rounds: round.maxRounds, ...share, text: ofHundred(share.value) };
  });
  return { name, points, scale: SHARES, format: ofHundred };
}

function costs(rounds: readonly RoundsValue[]): RoundsFigure {
  // One number of digits for all of them, and no more than stand beside each other; the table has the others.
  const reachOf = ({ low, high }: CostSummary): number => ((high ?? 0) - (low ?? 0)) / 2;
  const mostCost = Math.max(...rounds.map(({ cost }) => cost.perGoodPiece ?? 0));
  const uncertainty = Math.max(...rounds.map(({ cost }) => reachOf(cost)), mostCost / FINENESS);
  const points = rounds.map(({ maxRounds, cost: { perGoodPiece: value, low, high } }): RoundsPoint => {
    if (value === null) return { rounds: maxRounds, value, low: 0, high: 0, text: 'none' };
    return { rounds: maxRounds, value, low: low ?? value, high: high ?? value, text: moneyText(value, uncertainty) };
  });
  const priced = points.filter(({ value }) => value !== null);
  const [least, most] = [Math.min(...priced.map(({ low }) => low)), Math.max(...priced.map(({ high }) => high))];
  const scale = priced.length > 0 ? evenScale(least, most) : SHARES;
  return { name: 'Cost of a good piece', points, scale, format: String };
}

function figuresOf(rounds: readonly RoundsValue[]): RoundsFigure[] {
  const tested = rounds.filter(({ maxRounds }) => maxRounds > 0);
  return [
    costs(rounds),
    shares('Good pieces, of 100', rounds, (round) => round.yield),
    shares('Jobs that come out cheaper, of 100', tested, ({ pays }) => pays),
  ];
}

interface WorthChartProps {
  worth: Worth;
  /** The rounds that are set. */
  chosen: number;
  methodIndex: number;
}

export function WorthChart({ worth, chosen, methodIndex }: WorthChartProps) {
  return (
    <QuestionPanel
      title="What each number of rounds comes to"
      caption={() => 'Marks are the figures, bands where they lie 95 times in 100; the rounds that are set are shaded.'}
      outcome={worth}
      room="14rem"
      table={(value) => <TextTableView table={testValueTable(value)} />}
      figures={testValueFigures}
    >
      {({ rounds }) => (
        <RoundsChart
          figures={figuresOf(rounds)}
          rounds={rounds.map(({ maxRounds }) => maxRounds)}
          chosen={chosen}
          methodIndex={methodIndex}
        />
      )}
    </QuestionPanel>
  );
}
