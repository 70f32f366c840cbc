/** The figures of the stock in two groups: the strips there are, and how true they are. */
import type { Stock } from '../../sim/project/document';
import type { AnyKey } from '../../sim/project/key';
import { STOCK } from '../../sim/project/piece-keys';

/** Numbers and choices; what is more than one value has a place of its own. */
type StockFigure = {
  [Key in keyof Stock]-?: NonNullable<Stock[Key]> extends number | string ? Key : never;
}[keyof Stock];

const FIGURES = (Object.entries(STOCK.keys) as [StockFigure, AnyKey][]).filter(
  ([, { kind }]) => kind === 'number' || kind === 'choice',
);

/** A figure that tells the size of an error is one of how true the strips are. */
function tellsOfError(key: AnyKey): boolean {
  return key.kind === 'number' && (key.source ?? key.alsoOf) !== undefined;
}

export const STRIPS = FIGURES.filter(([, key]) => !tellsOfError(key)).map(([name]) => name);
export const TRUENESS = FIGURES.filter(([, key]) => tellsOfError(key)).map(([name]) => name);
