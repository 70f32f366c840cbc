/** Rows of text for the tables that the command line, the pages and the paper share. */

import type { GeometrySummary } from '../geometry/ring';
import type { CostSummary, MethodResult } from '../run/prediction';
import type { Interval, SpreadPart, SpreadSummary } from '../statistics/estimates';
import { quantileInterval } from '../statistics/quantiles';
import {
  angleText,
  countText,
  type Display,
  gapText,
  lengthText,
  moneyText,
  shareWithInterval,
  timeText,
} from './figures';
import { gapWithInterval, lengthWithInterval } from './intervals';
import { SOURCE_WORDS } from './sources';

export interface TextTable {
  head: readonly string[];
  rows: readonly (readonly string[])[];
}

/** Half the width of the 95 % interval of the 95th percentile show gap, mm: what the figure may be off by. */
export function showGapP95UncertaintyMm(result: MethodResult): number {
  const { low, high } = quantileInterval(result.sample.showGapMm, 0.95);
  return (high - low) / 2;
}

/** "0.31 mm": 95 of 100 pieces stay under it. */
export function showGapP95Text(result: MethodResult, display: Display): string {
  return gapText(result.prediction.showGapMm.p95, display, showGapP95UncertaintyMm(result));
}

function showGapP95WithInterval({ sample, prediction }: MethodResult, display: Display): string {
  return gapWithInterval(prediction.showGapMm.p95, quantileInterval(sample.showGapMm, 0.95), display);
}

export function costText(result: MethodResult): string {
  return pieceCostText(result.prediction.cost);
}

export function pieceCostText({ perGoodPiece, low, high }: CostSummary): string {
  if (perGoodPiece === null) return 'fewer than 1 good in 1,000';
  if (low === null || high === null) return moneyText(perGoodPiece);
  const [seen, least, most] = [perGoodPiece, low, high].map((amount) => moneyText(amount, (high - low) / 2));
  return `${seen} (${least} to ${most})`;
}

/** One row a method: what decides between them. */
export function methodTable(results: readonly MethodResult[], display: Display): TextTable {
  return {
    head: [
      'Method',
      'Good enough',
      'Gap, 95 of 100 under',
      'Will not close',
      'Time for a good piece',
      'Cost of a good piece',
    ],
    rows: results.map((result) => {
      const { name, willNotClose, cost } = result.prediction;
      const chance = shareWithInterval(result.prediction.yield);
      return [
        name,
        chance,
        showGapP95WithInterval(result, display),
        shareWithInterval(willNotClose),
        timeText(cost.minutesPerPiece, result.minutesInterval),
        costText(result),
      ];
    }),
  };
}

/** A flat frame, the only ring without a bevel, has members with an outer and an inner edge, and one opening. */
function sizeRows(geometry: GeometrySummary): [string, number][] {
  const { staveWidthMm, staveWidthMidMm, clearOpeningWideMm, clearOpeningNarrowMm } = geometry;
  const outside: [string, number][] = [
    ['Outside flats', geometry.outsideFlatsMm],
    ['Outside corners', geometry.outsideCornersMm],
  ];
  if (geometry.bevelDeg === 0) {
    return [
      ['Member length, outer edge', staveWidthMm],
      ['Member length, inner edge', 2 * staveWidthMidMm - staveWidthMm],
      ...outside,
      ['Clear opening', clearOpeningNarrowMm],
    ];
  }
  return [
    ['Stave width, wide end', staveWidthMm],
    ['Stave width, mid-height', staveWidthMidMm],
    ...outside,
    ['Clear opening, wide end', clearOpeningWideMm],
    ['Clear opening, narrow end', clearOpeningNarrowMm],
  ];
}

/** The nominal ring: what it measures and how the saw is set. */
export function geometryTable(geometry: GeometrySummary, display: Display, fractions = false): TextTable {
  const length = (mm: number): string => lengthText(mm, display, { fractions });
  return {
    head: ['The ring', ''],
    rows: [
      ['Blade tilt from square', angleText(geometry.bevelDeg)],
      ['Blade tilt from flat', angleText(90 - geometry.bevelDeg)],
      ['Gauge swing from square', angleText(geometry.crosscutDeg)],
      ...sizeRows(geometry).map(([what, mm]) => [what, length(mm)]),
      ['Joint through the thickness', length(geometry.jointLengthMm)],
    ],
  };
}

/** One method by itself, figure by figure. */
export function predictionTable(result: MethodResult, display: Display): TextTable {
  const { prediction } = result;
  const { mouthMm, hiddenGapMm, clearOpeningMm } = prediction;
  const { sample, outOfRoundMm, stepMm, intervals } = result;
  const length = (mm: number, interval: Interval): string => lengthWithInterval(mm, interval, display);
  const spread = (what: string, summary: SpreadSummary, off: Record<SpreadPart, Interval>): string[][] => [
    [`${what}, 5 of 100 under`, length(summary.p05, off.p05)],
    [`${what}, middle ring`, length(summary.p50, off.p50)],
    [`${what}, 95 of 100 under`, length(summary.p95, off.p95)],
  ];
  return {
    head: [prediction.name, ''],
    rows: [
      ['Rings simulated', `${countText(prediction.trials)}, by ${prediction.rule}`],
      ['Good enough', shareWithInterval(prediction.yield)],
      // Certain, and not only all of those simulated: there is no insert.
      ...(prediction.insertFits.low === 1 ? [] : [['Insert fits', shareWithInterval(prediction.insertFits)]]),
      ['Will not close', shareWithInterval(prediction.willNotClose)],
      [
        'Worst gap that shows, middle ring',
        gapWithInterval(prediction.showGapMm.p50, quantileInterval(sample.showGapMm, 0.5), display),
      ],
      ['Worst gap that shows, 95 of 100 under', showGapP95WithInterval(result, display)],
      ['Worst hidden gap, 95 of 100 under', gapWithInterval(hiddenGapMm.p95, intervals.hiddenGapMm.p95, display)],
      ...spread('Mouth at dry fit', mouthMm, intervals.mouthMm),
      ...spread('Clear opening', clearOpeningMm, intervals.clearOpeningMm),
      ['Out of round, 95 of 100 under', length(outOfRoundMm.p95, intervals.outOfRoundMm.p95)],
      ['Step between staves, 95 of 100 under', length(stepMm.p95, intervals.stepMm.p95)],
      ['Cuts', `${prediction.cuts}`],
      ['Strip used by one stave', lengthText(prediction.pitchMm, display)],
      ['Strip needed', lengthText(prediction.stripNeededMm, display)],
      ['Time for a good piece', timeText(prediction.cost.minutesPerPiece, result.minutesInterval)],
      ['Cost of a good piece', costText(result)],
    ],
  };
}

/** "84 %", "under 1 %": a source's part of the variance. */
export function percentText(share: number): string {
  return share < 0.005 ? 'under 1 %' : `${Math.round(100 * share)} %`;
}

/** Where the gap comes from, largest share first; sources that are zero are left out. Null without a budget. */
export function budgetTable(result: MethodResult, display: Display): TextTable | null {
  const { budget } = result.prediction;
  if (budget === undefined) return null;
  const lines = budget.filter((line) => line.varianceShare > 0);
  lines.sort((a, b) => b.varianceShare - a.varianceShare);
  return {
    head: ['Where the gap comes from', 'Share', 'If it were perfect, 95 of 100 under'],
    rows: lines.map((line) => [
      SOURCE_WORDS[line.source].label,
      percentText(line.varianceShare),
      gapText(line.showGapP95WithoutMm, display),
    ]),
  };
}

/** Columns lined up for a terminal, two spaces apart, no blanks at the line ends. */
export function plainText({ head, rows }: TextTable): string {
  const lines = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  return lines
    .map((line) =>
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
