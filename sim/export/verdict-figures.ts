/** The figures of the verdict: method by method, the chance over the limit, and every dot. */
import type { MethodResult } from '../run/prediction';
import type { Share } from '../statistics/estimates';
import { quantileInterval } from '../statistics/quantiles';
import type { ComparedMethod } from '../wording/differences';
import type { Display } from '../wording/figures';
import {
  type FigureTable,
  intervalColumns,
  lengthColumn,
  lengthFigure,
  lengthUnit,
  oneShareColumn,
  oneShareFigure,
  plainColumn,
  shareColumns,
  shareFigures,
} from './figure-table';

/** One row a method: what decides between them, each with its 95 % interval. */
export function methodFigures(results: readonly MethodResult[], display: Display): FigureTable {
  return {
    columns: [
      plainColumn('Method'),
      plainColumn('Rings simulated'),
      ...shareColumns('Good'),
      ...intervalColumns('Gap that 95 of 100 stay under', lengthUnit(display)),
      ...shareColumns('Will not close'),
      ...intervalColumns('Time for a good piece', 'min'),
      ...intervalColumns('Cost of a good piece', 'money'),
    ],
    rows: results.map(({ prediction, sample, minutesInterval }) => {
      const { name, trials, willNotClose, cost } = prediction;
      const { value, low, high } = quantileInterval(sample.showGapMm, 0.95);
      return [
        name,
        trials,
        ...shareFigures(prediction.yield),
        ...[value, low, high].map((mm) => lengthFigure(mm, display)),
        ...shareFigures(willNotClose),
        cost.minutesPerPiece,
        minutesInterval?.low ?? null,
        minutesInterval?.high ?? null,
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

export interface BarLine {
  name: string;
  /** Shares of all rings: without a gap, between the edges, and beyond the last of them. */
  noGap: number;
  onScale: readonly number[];
  beyond: number;
}

/** One row a bar, with its edges; the first row are the rings without a gap, which stand before the scale. */
export function barFigures(lines: readonly BarLine[], edgesMm: readonly number[], display: Display): FigureTable {
  const shares = (shareOf: (line: BarLine) => number): number[] => lines.map((line) => oneShareFigure(shareOf(line)));
  const edge = (place: number): number => lengthFigure(edgesMm[place] ?? 0, display);
  const bars = Array.from({ length: Math.max(0, edgesMm.length - 1) }, (_, bar) => bar);
  return {
    columns: [
      lengthColumn('Gap from', display),
      lengthColumn('Gap to', display),
      ...lines.map(({ name }) => oneShareColumn(name)),
    ],
    rows: [
      [null, edge(0), ...shares(({ noGap }) => noGap)],
      ...bars.map((bar) => [edge(bar), edge(bar + 1), ...shares(({ onScale }) => onScale[bar] ?? 0)]),
      [edge(edgesMm.length - 1), null, ...shares(({ beyond }) => beyond)],
    ],
  };
}

/** One row a method: what it has more than the one they are held against, as `differenceTable`. */
export function differenceFigures(compared: readonly ComparedMethod[], display: Display): FigureTable {
  const length = (mm: number): number => lengthFigure(mm, display);
  return {
    columns: [
      plainColumn('Method'),
      ...shareColumns('Good, more'),
      ...intervalColumns('Gap that 95 of 100 stay under, more', lengthUnit(display)),
      ...intervalColumns('Cost of a good piece, more', 'money'),
      ...shareColumns('Tightest of all'),
    ],
    rows: compared.map(({ result, bestChance, differences }) => {
      const none = [null, null, null];
      const { showGapP95Mm: gap, cost } = differences ?? {};
      return [
        result.prediction.name,
        ...(differences ? shareFigures(differences.yield) : none),
        ...(gap ? [length(gap.value), length(gap.low), length(gap.high)] : none),
        ...(cost ? [cost.value, cost.low, cost.high] : none),
        ...shareFigures(bestChance),
      ];
    }),
  };
}
