/** The figures of the verdict: method by method, the chance over the limit, and every dot. */
import type { MethodResult, Share } from '../run/prediction';
import { quantileInterval } from '../statistics/quantiles';
import type { Display } from '../wording/figures';
import {
  type FigureTable,
  intervalColumns,
  lengthColumn,
  lengthFigure,
  plainColumn,
  shareColumns,
  shareFigures,
} from './figure-table';

/** One row a method: what decides between them, each with its 95 % interval. */
export function methodFigures(results: readonly MethodResult[], display: Display): FigureTable {
  const gap = (name: string) => lengthColumn(name, display);
  return {
    columns: [
      plainColumn('Method'),
      plainColumn('Rings simulated'),
      ...shareColumns('Good'),
      gap('Gap that 95 of 100 stay under'),
      gap('Gap that 95 of 100 stay under, low'),
      gap('Gap that 95 of 100 stay under, high'),
      ...shareColumns('Will not close'),
      plainColumn('Time for a good piece', 'min'),
      ...intervalColumns('Cost of a good piece', 'money'),
    ],
    rows: results.map(({ prediction, sample }) => {
      const { name, trials, willNotClose, cost } = prediction;
      const { value, low, high } = quantileInterval(sample.showGapMm, 0.95);
      return [
        name,
        trials,
        ...shareFigures(prediction.yield),
        ...[value, low, high].map((mm) => lengthFigure(mm, display)),
        ...shareFigures(willNotClose),
        cost.minutesPerPiece,
        cost.perGoodPiece,
        cost.low,
        cost.high,
      ];
    }),
  };
}

export interface YieldLine {
  name: string;
  /** Share of good pieces at a limit, mm. */
  at: (limitMm: number) => Share;
}

/** One row a limit, three columns a method. */
export function yieldFigures(lines: readonly YieldLine[], limitsMm: readonly number[], display: Display): FigureTable {
  return {
    columns: [lengthColumn('Limit', display), ...lines.flatMap(({ name }) => shareColumns(name))],
    rows: limitsMm.map((mm) => [lengthFigure(mm, display), ...lines.flatMap(({ at }) => shareFigures(at(mm)))]),
  };
}

export interface DotLine {
  name: string;
  /** Ascending, as many for every method. */
  gapsMm: readonly number[];
}

/** One row a dot, from the tightest up; one column a method. */
export function dotFigures(lines: readonly DotLine[], display: Display): FigureTable {
  const count = Math.max(0, ...lines.map(({ gapsMm }) => gapsMm.length));
  return {
    columns: [plainColumn('Dot'), ...lines.map(({ name }) => lengthColumn(name, display))],
    rows: Array.from({ length: count }, (_, dot) => [
      dot + 1,
      ...lines.map(({ gapsMm }) => {
        const mm = gapsMm[dot];
        return mm === undefined ? null : lengthFigure(mm, display);
      }),
    ]),
  };
}
