/** Tables for a machine or a spreadsheet: figures as numbers, each column with its unit. */
import { MM_PER_INCH } from '../geometry/thresholds';
import type { Share } from '../statistics/estimates';
import type { Display } from '../wording/figures';

/** null: there is no such figure. */
export type Figure = string | number | null;

export interface FigureColumn {
  head: string;
  /** '' for words, counts and figures without one. */
  unit: string;
}

export interface FigureTable {
  columns: readonly FigureColumn[];
  /** As long as `columns`, each; may be gone through more than once. */
  rows: Iterable<readonly Figure[]>;
}

/** More than this a double does not hold; what a change of unit adds beyond is dust. */
const DIGITS = 15;

const neat = (value: number): number => Number(value.toPrecision(DIGITS));

export const lengthUnit = (display: Display): string => (display === 'inch' ? 'in' : 'mm');

export const lengthColumn = (head: string, display: Display): FigureColumn => ({ head, unit: lengthUnit(display) });

/** A length in the unit that `lengthColumn` names. */
export const lengthFigure = (mm: number, display: Display): number =>
  display === 'inch' ? neat(mm / MM_PER_INCH) : mm;

export const plainColumn = (head: string, unit = ''): FigureColumn => ({ head, unit });

const inHundred = (share: number): number => neat(100 * share);

/** A share and where it lies, 95 times in 100; as the pages say it, of a hundred. */
export const shareColumns = (head: string): FigureColumn[] => intervalColumns(head, 'in 100');

export const shareFigures = ({ value, low, high }: Share): number[] => [value, low, high].map(inHundred);

/** A figure and the ends of its 95 % interval. */
export const intervalColumns = (head: string, unit: string): FigureColumn[] =>
  [head, `${head}, low`, `${head}, high`].map((name) => ({ head: name, unit }));

export const oneShareColumn = (head: string): FigureColumn => ({ head, unit: 'in 100' });

export const oneShareFigure = inHundred;
