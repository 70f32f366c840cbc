/** The figures of single joints and of the mouth at dry fit. */
import type { MouthAgainstGap } from '../decide/mouth-against-gap';
import type { SingleRing } from '../run/single-ring';
import type { SpreadSummary } from '../statistics/estimates';
import { countText, type Display } from '../wording/figures';
import { type FigureTable, lengthColumn, lengthFigure, plainColumn, shareColumns, shareFigures } from './figure-table';

/** One row a joint, as `jointTable`; `ring` is the ring that is looked at, if there is one. */
export function jointFigures(p95Mm: readonly number[], ring: SingleRing | null, display: Display): FigureTable {
  const shown = ring?.closes === true ? ring : null;
  const name = shown === null ? '' : `Ring ${countText(shown.ring + 1)}`;
  const sides =
    shown === null ? [] : [lengthColumn(`${name}, outside`, display), lengthColumn(`${name}, inside`, display)];
  return {
    columns: [
      plainColumn('Joint'),
      plainColumn('From stave'),
      plainColumn('To stave'),
      ...sides,
      lengthColumn('All rings, 95 of 100 under', display),
    ],
    rows: p95Mm.map((mm, joint) => {
      const opening = shown?.joints[joint];
      return [
        joint + 1,
        joint + 1,
        ((joint + 1) % p95Mm.length) + 1,
        ...(opening ? [lengthFigure(opening.outerMm, display), lengthFigure(opening.innerMm, display)] : []),
        lengthFigure(mm, display),
      ];
    }),
  };
}

/** The spread of the mouth; below 0 the ends overlap. */
export function mouthFigures({ mean, sd, p05, p50, p95 }: SpreadSummary, display: Display): FigureTable {
  const rows: [string, number][] = [
    ['5 of 100 rings below', p05],
    ['Half of the rings below', p50],
    ['95 of 100 rings below', p95],
    ['Mean', mean],
    ['Standard deviation', sd],
  ];
  return {
    columns: [plainColumn('Mouth at dry fit'), lengthColumn('Open; overlap below 0', display)],
    rows: rows.map(([name, mm]) => [name, lengthFigure(mm, display)]),
  };
}

/** How often the gap is over the limit, by the size of the mouth. */
export function mouthAgainstGapFigures(found: MouthAgainstGap, display: Display): FigureTable {
  const [lower, upper] = [lengthFigure(found.lowerMm, display), lengthFigure(found.upperMm, display)];
  return {
    columns: [
      plainColumn('Rings'),
      lengthColumn('Mouth from', display),
      lengthColumn('Mouth to', display),
      ...shareColumns('Gap over the limit'),
    ],
    rows: [
      ['lowest quarter', null, lower, ...shareFigures(found.lowest)],
      ['half between', lower, upper, ...shareFigures(found.middle)],
      ['highest quarter', upper, null, ...shareFigures(found.highest)],
    ],
  };
}
