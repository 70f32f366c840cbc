/** Every single ring of a run. */
import type { MethodResult } from '../run/prediction';
import { countText, type Display } from '../wording/figures';
import { type Figure, type FigureTable, lengthColumn, lengthFigure, plainColumn } from './figure-table';

/** A spreadsheet has little more than a million lines. */
export const MOST_RINGS = 1_000_000;

/** What the table is of. */
export function ringTableName({ prediction: { name, trials } }: MethodResult): string {
  const which = trials > MOST_RINGS ? `, the first ${countText(MOST_RINGS)} of ${countText(trials)}` : '';
  return `Single rings of “${name}”${which}`;
}

/**
 * One row a ring in the order they were drawn, counted from 1: the same number is the same luck in every method. A ring
 * that will not close has no step, and gaps of 2.001 mm at least.
 */
export function ringFigures({ byRing, prediction }: MethodResult, display: Display): FigureTable {
  return {
    columns: [
      plainColumn('Ring'),
      lengthColumn('Widest gap that shows', display),
      lengthColumn('Mouth at dry fit, overlap below 0', display),
      plainColumn('Good', '1 = yes'),
      plainColumn('Closes', '1 = yes'),
      lengthColumn('Widest hidden gap', display),
      lengthColumn('Step between staves', display),
      plainColumn('Insert fits', '1 = yes'),
    ],
    // Certain, and not only all of those simulated: there is no insert.
    rows: { [Symbol.iterator]: () => ringRows(byRing, prediction.insertFits.low < 1, display) },
  };
}

function* ringRows(
  { showGapMm, hiddenGapMm, mouthMm, stepMm, good, closes, insertFits }: MethodResult['byRing'],
  hasInsert: boolean,
  display: Display,
): Generator<readonly Figure[], void, void> {
  const count = Math.min(showGapMm.length, MOST_RINGS);
  for (let ring = 0; ring < count; ring++) {
    yield [
      ring + 1,
      lengthFigure(showGapMm[ring]!, display),
      lengthFigure(mouthMm[ring]!, display),
      good[ring]!,
      closes[ring]!,
      lengthFigure(hiddenGapMm[ring]!, display),
      closes[ring] === 1 ? lengthFigure(stepMm[ring]!, display) : null,
      hasInsert ? insertFits[ring]! : null,
    ];
  }
}
