/** Tables that only the maker's sheet shows. */
import type { Project } from '../project/document';
import type { GapPart, MethodResult } from '../run/prediction';
import { quantileInterval } from '../statistics/quantiles';
import { angleText, type Display, gapText, lengthText, moneyText } from './figures';
import { gapWithInterval } from './intervals';
import type { TextTable } from './tables';

const GRAIN_WORDS = { alongRing: 'around the ring', upStave: 'up the staves' } as const;
const FACE_WORDS = { outside: 'outside', inside: 'inside', both: 'both' } as const;

/** What is made. */
export function pieceRows({ piece, stock, display }: Project): TextTable {
  const length = (mm: number): string => lengthText(mm, display);
  return {
    head: ['The piece', ''],
    rows: [
      ['Sides', `${piece.sides}`],
      ['Slope from upright', angleText(piece.slopeDeg)],
      ['Height along the face', length(piece.heightMm)],
      ['Thickness', length(piece.thicknessMm)],
      ['Wood', stock.wood],
      ['Grain', GRAIN_WORDS[piece.grain]],
      ['Face that shows', FACE_WORDS[piece.showFace]],
      ...(piece.insert === undefined
        ? []
        : [['Insert', `${length(piece.insert.diameterMm)} with ${length(piece.insert.clearanceMm)} clearance`]]),
    ],
  };
}

/** What counts as good enough, and what things cost. */
export function limitRows({ limits, costs, piece, display }: Project): TextTable {
  return {
    head: ['Good enough', ''],
    rows: [
      ['Gap where it shows', gapText(limits.showGapMm, display)],
      ...(piece.showFace === 'both' ? [] : [['Gap where it is hidden', gapText(limits.hiddenGapMm, display)]]),
      ['Gap that can be put right', gapText(limits.remedyGapMm, display)],
      ['Pieces wanted', `${costs.batch}`],
      ['Wood for a ring', moneyText(costs.stockPerRing)],
      ['Wood for a test round', moneyText(costs.testStockPerRound)],
      ['An hour of work', moneyText(costs.ratePerHour)],
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
