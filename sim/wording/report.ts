/** Tables that only the maker's sheet shows. */
import type { Project, SizeBy } from '../project/document';
import { NUMBER_FIELDS, type NumberKey } from '../project/fields';
import type { MethodResult } from '../run/prediction';
import type { GapPart } from '../statistics/estimates';
import { quantileInterval } from '../statistics/quantiles';
import { countText, type Display, givenLengthText, givenText, moneyText } from './figures';
import { gapWithInterval } from './intervals';
import type { TextTable } from './tables';

const GRAIN_WORDS = { alongRing: 'around the ring', upStave: 'up the staves' } as const;
const FACE_WORDS = { outside: 'outside', inside: 'inside', both: 'both' } as const;

const SIZE_WORDS: Record<SizeBy, string> = {
  outsideFlats: 'outside flats',
  outsideCorners: 'outside corners',
  clearOpening: 'clear opening',
  staveWidth: 'stave width',
};

/** A figure of the project file under the name that its field has everywhere. */
const row = (key: NumberKey, text: string): string[] => [NUMBER_FIELDS[key].label, text];

/** "0.6 min", "120 min": minutes as they were typed in, in the unit of their field. */
function givenMinutesText(minutes: number): string {
  return `${givenText(minutes)} min`;
}

/** What is made. */
export function pieceRows({ piece, stock, display }: Project): TextTable {
  const length = (mm: number): string => givenLengthText(mm, display);
  const { insert, size } = piece;
  const isFlat = piece.slopeDeg === 90;
  return {
    head: ['The piece', ''],
    rows: [
      row('piece.sides', `${piece.sides}`),
      row('piece.slopeDeg', isFlat ? 'lies flat, 90°' : `${givenText(piece.slopeDeg)}° from upright`),
      row('piece.size.mm', `${length(size.mm)}, ${SIZE_WORDS[size.by]}`),
      isFlat
        ? ['Member width', length(piece.heightMm)]
        : row('piece.heightMm', `${length(piece.heightMm)} on the face`),
      row('piece.thicknessMm', length(piece.thicknessMm)),
      ['Wood', stock.wood],
      ['Grain', GRAIN_WORDS[piece.grain]],
      ['Face that shows', FACE_WORDS[piece.showFace]],
      ...(insert === undefined
        ? []
        : [
            row('piece.insert.diameterMm', length(insert.diameterMm)),
            row('piece.insert.clearanceMm', length(insert.clearanceMm)),
          ]),
    ],
  };
}

/** What counts as good enough, and what things cost. */
export function limitRows({ limits, costs, piece, display }: Project): TextTable {
  const hidden = piece.showFace === 'both' ? 'nothing is hidden' : givenLengthText(limits.hiddenGapMm, display);
  return {
    head: ['Good enough, and costs', ''],
    rows: [
      row('limits.showGapMm', givenLengthText(limits.showGapMm, display)),
      row('limits.hiddenGapMm', hidden),
      row('limits.remedyGapMm', givenLengthText(limits.remedyGapMm, display)),
      row('costs.batch', countText(costs.batch)),
      row('costs.stockPerRing', moneyText(costs.stockPerRing)),
      row('costs.testStockPerRound', moneyText(costs.testStockPerRound)),
      row('costs.ratePerHour', moneyText(costs.ratePerHour)),
      row('costs.remedyMinutes', givenMinutesText(costs.remedyMinutes)),
      row('costs.assemblyMinutes', givenMinutesText(costs.assemblyMinutes)),
    ],
  };
}

/** How the run was asked for. */
export function runRows({ run }: Project): TextTable {
  return {
    head: ['The run', ''],
    rows: [
      row('run.trials', countText(run.trials)),
      row('run.seed', `${run.seed}`),
      ['How joints close', run.rule],
      row('run.settle.relative', run.settle === undefined ? 'none' : `${run.settle.relative}`),
    ],
  };
}

const UNDER = { p50: 50, p90: 90, p95: 95, p99: 99 } as const;

/** The widest gaps of a ring, each with how far the figure may be off. */
export function gapRows({ sample, prediction, intervals }: MethodResult, display: Display): TextTable {
  const rows = (Object.keys(UNDER) as GapPart[]).map((part) => {
    const { value, ...interval } = quantileInterval(sample.showGapMm, UNDER[part] / 100);
    return [
      `${UNDER[part]} of 100 rings stay under`,
      gapWithInterval(value, interval, display),
      gapWithInterval(prediction.hiddenGapMm[part], intervals.hiddenGapMm[part], display),
    ];
  });
  return { head: ['Widest gap of a ring', 'Where it shows', 'Where it is hidden'], rows };
}
