/** The figures of the sources of error: budget, best aim and accuracy needed. */
import type { SourceBudget } from '../budget/budget';
import type { IndexEstimate } from '../budget/sobol';
import type { SourceIndices } from '../budget/source-sensitivity';
import type { AccuracyNeeded } from '../decide/accuracy-needed';
import type { BestAim } from '../decide/aim';
import type { SourceKey } from '../errors/source-scale';
import { fieldOf } from '../wording/accuracy';
import { weighedSources } from '../wording/budget';
import type { Display } from '../wording/figures';
import { SOURCE_WORDS } from '../wording/sources';
import {
  type Figure,
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

/** One row for every source above zero, the one that brings most in all first. */
export function budgetFigures(budget: SourceBudget, indices: readonly SourceIndices[], display: Display): FigureTable {
  const part = (index: IndexEstimate | undefined): Figure[] => (index ? shareFigures(index) : [null, null, null]);
  return {
    columns: [
      plainColumn('Source'),
      oneShareColumn('Share of the variance of the openings'),
      lengthColumn('If it were perfect, 95 of 100 under', display),
      ...intervalColumns('Change', lengthUnit(display)),
      ...shareColumns('Part of the worst gap’s variance alone'),
      ...shareColumns('Part of the worst gap’s variance in all'),
    ],
    rows: weighedSources(budget, indices).map(({ effect, index }) => {
      const { value, low, high } = effect.showGapP95ChangeMm;
      return [
        SOURCE_WORDS[effect.source].label,
        oneShareFigure(effect.varianceShare),
        ...[effect.showGapP95WithoutMm, value, low, high].map((mm) => lengthFigure(mm, display)),
        ...part(index?.first),
        ...part(index?.total),
      ];
    }),
  };
}

/** One row for every offset of the tilt that was tried. */
export function aimFigures({ curve }: BestAim): FigureTable {
  return {
    columns: [plainColumn('Tilt aimed off', '°'), ...shareColumns('Good')],
    rows: curve.map(({ aimDeg, yield: good }) => [aimDeg, ...shareFigures(good)]),
  };
}

/** One row a figure, source by source; units differ from row to row and stand in a column of their own. */
export function accuracyFigures(needed: AccuracyNeeded, display: Display): FigureTable {
  const balanced = new Map((needed.balanced ?? []).map(({ source, figures }) => [source, figures]));
  const shown = (key: SourceKey, value: number | null | undefined): Figure => {
    if (value === null || value === undefined) return null;
    return fieldOf(key).unit === 'mm' ? lengthFigure(value, display) : value;
  };
  const unitOf = (key: SourceKey): string => {
    const { unit } = fieldOf(key);
    return unit === 'mm' && display === 'inch' ? 'in' : unit;
  };
  return {
    columns: [
      plainColumn('Source'),
      plainColumn('Figure'),
      plainColumn('Unit'),
      plainColumn('Now'),
      plainColumn('Needed alone'),
      plainColumn('Needed together'),
      oneShareColumn('Good if perfect'),
    ],
    rows: needed.sources.flatMap(({ source, figures, yieldIfPerfect }) =>
      figures.map(({ key, now, needed: alone }) => [
        SOURCE_WORDS[source].label,
        fieldOf(key).label,
        unitOf(key),
        shown(key, now),
        shown(key, alone),
        shown(key, balanced.get(source)?.find((figure) => figure.key === key)?.needed),
        oneShareFigure(yieldIfPerfect),
      ]),
    ),
  };
}
