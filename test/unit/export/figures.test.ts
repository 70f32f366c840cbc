import { describe, expect, test } from 'vitest';
import { barShares } from '../../../renderer/charts/bar-rows';
import type { AccuracyNeeded } from '../../../sim/decide/accuracy-needed';
import { methodDifferences } from '../../../sim/decide/differences';
import type { Figure, FigureTable } from '../../../sim/export/figure-table';
import { jointFigures, mouthFigures } from '../../../sim/export/joint-figures';
import { geometryFigures } from '../../../sim/export/piece-figures';
import { MOST_RINGS, ringFigures, ringTableName } from '../../../sim/export/ring-figures';
import { accuracyFigures } from '../../../sim/export/source-figures';
import { testPieceTable } from '../../../sim/export/test-figures';
import {
  barFigures,
  differenceFigures,
  dotFigures,
  methodFigures,
  yieldFigures,
} from '../../../sim/export/verdict-figures';
import { ringGeometry } from '../../../sim/geometry/ring';
import { MM_PER_INCH } from '../../../sim/geometry/thresholds';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import { runMethod } from '../../../sim/run/run-method';
import { singleRing } from '../../../sim/run/single-ring';
import { TEST_PIECE_KINDS, testPieceFigures } from '../../../sim/testing/bench-card';
import { gapText, lengthText, shareWithInterval } from '../../../sim/wording/figures';
import { gapWithInterval } from '../../../sim/wording/intervals';
import { jointTable } from '../../../sim/wording/joints';
import { mouthTable } from '../../../sim/wording/mouth';
import { geometryTable, methodTable } from '../../../sim/wording/tables';

const project = exampleProject();
const TRIALS = 4000;
const results = [0, 2].map((method) => finish(runMethod(project, method, { trials: TRIALS })));
const result = results[0]!;

const rowsOf = ({ rows }: FigureTable): (readonly Figure[])[] => [...rows];

function column({ columns, rows }: FigureTable, head: string): Figure[] {
  const place = columns.findIndex((one) => one.head === head);
  if (place < 0) throw new Error(`There is no column ${head}.`);
  return [...rows].map((row) => row[place] ?? null);
}

const asShare = (figures: Figure[]) => {
  const [value, low, high] = figures.map((figure) => Number(figure) / 100);
  return { value: value!, low: low!, high: high! };
};

describe('figures for a spreadsheet', () => {
  test('have a unit for every column and a figure for every column in every row', () => {
    const tables = [
      methodFigures(results, 'metric'),
      jointFigures(result.prediction.jointShowGapP95Mm, null, 'inch'),
      mouthFigures(result.prediction.mouthMm, 'metric'),
      geometryFigures(ringGeometry(project.piece), 'metric'),
      ringFigures(result, 'metric'),
    ];
    for (const table of tables) {
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
      expect(new Set(table.columns.map(({ head }) => head)).size).toBe(table.columns.length);
    }
  });

  test('are those of the table of methods, before they were rounded', () => {
    const figures = methodFigures(results, 'metric');
    const words = methodTable(results, 'metric');
    rowsOf(figures).forEach((row, k) => {
      expect(row[0]).toBe(words.rows[k]?.[0]);
      expect(shareWithInterval(asShare(row.slice(2, 5)))).toBe(words.rows[k]?.[1]);
      const [p95, low, high] = row.slice(5, 8).map(Number);
      expect(gapWithInterval(p95!, { low: low!, high: high! }, 'metric')).toBe(words.rows[k]?.[2]);
      expect(p95).toBe(results[k]?.prediction.showGapMm.p95);
    });
  });

  test('are told in the unit of the screen', () => {
    const geometry = ringGeometry(project.piece);
    for (const display of ['metric', 'inch'] as const) {
      const table = geometryFigures(geometry, display);
      const words = new Map(geometryTable(geometry, display).rows.map(([name = '', text = '']) => [name, text]));
      table.columns.forEach(({ head, unit }, k) => {
        const figure = Number(rowsOf(table)[0]?.[k]);
        const mm = unit === 'in' ? figure * MM_PER_INCH : figure;
        if (unit !== '°') expect(lengthText(mm, display), head).toBe(words.get(head));
        if (unit !== '°') expect(unit).toBe(display === 'inch' ? 'in' : 'mm');
      });
    }
    const inches = column(mouthFigures(result.prediction.mouthMm, 'inch'), 'Open; overlap below 0');
    expect(Number(inches[1]) * MM_PER_INCH).toBeCloseTo(result.prediction.mouthMm.p50, 12);
    expect(mouthTable(result.prediction.mouthMm, 'inch').rows).toHaveLength(inches.length);
  });

  test('of a ring’s joints are those of the joints’ table', () => {
    const ring = singleRing(project, 0, 12, { trials: TRIALS });
    const p95Mm = result.prediction.jointShowGapP95Mm;
    const rows = rowsOf(jointFigures(p95Mm, ring, 'metric'));
    jointTable(p95Mm, ring, 'metric').rows.forEach(([, staves, outside, , all], k) => {
      const [, from, to, outerMm, , p95] = rows[k] ?? [];
      expect(`${from} and ${to}`).toBe(staves);
      expect(Number(outerMm) < 0.005 ? 'touches' : gapText(Number(outerMm), 'metric')).toBe(outside);
      expect(gapText(Number(p95), 'metric')).toBe(all);
    });
  });

  test('of single rings are every ring, and add up to what the run says', () => {
    const table = ringFigures(result, 'metric');
    expect(rowsOf(table)).toHaveLength(TRIALS);
    const sum = (head: string): number => column(table, head).reduce<number>((all, figure) => all + Number(figure), 0);
    expect(sum('Good') / TRIALS).toBe(result.prediction.yield.value);
    expect(1 - sum('Closes') / TRIALS).toBeCloseTo(result.prediction.willNotClose.value, 12);
    expect(sum('Widest gap that shows') / TRIALS).toBeCloseTo(result.prediction.showGapMm.mean, 10);
    expect(sum('Mouth at dry fit, overlap below 0') / TRIALS).toBeCloseTo(result.prediction.mouthMm.mean, 10);
    expect(sum('Widest hidden gap') / TRIALS).toBeCloseTo(result.prediction.hiddenGapMm.mean, 10);
    expect(sum('Step between staves') / TRIALS).toBeCloseTo(result.stepMm.mean, 10);
    expect(sum('Insert fits') / TRIALS).toBeCloseTo(result.prediction.insertFits.value, 12);
    expect(ringTableName(result)).toBe(`Single rings of “${result.prediction.name}”`);
  });

  test('of a ring that will not close have no step, and none fits without an insert', () => {
    const certain = { value: 1, low: 1, high: 1 };
    const bare: typeof result = {
      ...result,
      prediction: { ...result.prediction, insertFits: certain },
      byRing: { ...result.byRing, closes: result.byRing.closes.map((_, ring) => (ring === 0 ? 0 : 1)) },
    };
    const table = ringFigures(bare, 'metric');
    expect(
      column(table, 'Step between staves')
        .map((figure) => figure === null)
        .indexOf(false),
    ).toBe(1);
    expect(column(table, 'Insert fits').every((figure) => figure === null)).toBe(true);
  });

  test('of more rings than a spreadsheet holds stop there, and say so', () => {
    const many = MOST_RINGS + 3;
    const large = {
      ...result,
      prediction: { ...result.prediction, trials: many },
      byRing: {
        showGapMm: new Float64Array(many),
        hiddenGapMm: new Float64Array(many),
        mouthMm: new Float64Array(many),
        stepMm: new Float64Array(many),
        good: new Uint8Array(many),
        closes: new Uint8Array(many),
        insertFits: new Uint8Array(many),
      },
    };
    let count = 0;
    for (const _ of ringFigures(large, 'metric').rows) count += 1;
    expect(count).toBe(MOST_RINGS);
    expect(ringTableName(large)).toMatch(/, the first 1,000,000 of 1,000,003$/);
  });

  test('of curve and dots give each method its columns, at every limit and for every dot', () => {
    const at = (limitMm: number) => ({ value: limitMm, low: limitMm / 2, high: 1 });
    const curve = yieldFigures([{ name: 'A', at }], [0, 0.25], 'metric');
    expect(rowsOf(curve)).toEqual([
      [0, 0, 0, 100],
      [0.25, 25, 12.5, 100],
    ]);
    const dots = dotFigures(
      [
        { name: 'A', gapsMm: [0.1, 0.2] },
        { name: 'B', gapsMm: [0.3] },
      ],
      'metric',
    );
    expect(rowsOf(dots)).toEqual([
      [1, 0.1, 0.3],
      [2, 0.2, null],
    ]);
  });

  test('of bars hold every ring once, those without a gap first and those beyond the scale last', () => {
    const edgesMm = [0, 0.05, 0.1];
    const lines = results.map(({ prediction, sample }) => {
      return { name: prediction.name, ...barShares(sample.showGapMm, edgesMm) };
    });
    const rows = rowsOf(barFigures(lines, edgesMm, 'metric'));
    expect(rows.map(([from, to]) => [from, to])).toEqual([
      [null, 0],
      [0, 0.05],
      [0.05, 0.1],
      [0.1, null],
    ]);
    for (const method of [2, 3]) {
      expect(rows.reduce((sum, row) => sum + Number(row[method]), 0)).toBeCloseTo(100, 10);
    }
  });

  test('of differences are first less second, and empty for the one that is held against', () => {
    const [first, second] = results;
    const bestChance = { value: 0.25, low: 0.2, high: 0.3 };
    const compared = [
      { result: first!, bestChance },
      { result: second!, bestChance, differences: methodDifferences(second!, first!) },
    ];
    const rows = rowsOf(differenceFigures(compared, 'inch'));
    expect(rows[0]).toEqual([first!.prediction.name, ...Array(9).fill(null), 25, 20, 30]);
    const more = second!.prediction.yield.value - first!.prediction.yield.value;
    expect(rows[1]?.[1]).toBeCloseTo(100 * more, 10);
    const widerMm = second!.prediction.showGapMm.p95 - first!.prediction.showGapMm.p95;
    expect(Number(rows[1]?.[4]) * MM_PER_INCH).toBeCloseTo(widerMm, 10);
  });

  test('of accuracy needed stand in the unit of their row', () => {
    const needed: AccuracyNeeded = {
      trials: 1000,
      wanted: 0.95,
      yieldNow: 0.8,
      sources: [
        {
          source: 'tiltShared',
          factor: 0.5,
          figures: [{ key: 'tilt.sharedDeg', now: 0.1, needed: 0.05 }],
          yieldIfPerfect: 0.97,
        },
        {
          source: 'widthPerCut',
          factor: null,
          figures: [{ key: 'width.perCutMm', now: 0.254, needed: null }],
          yieldIfPerfect: 0.85,
        },
      ],
      inTheWay: [],
      balanced: [
        { source: 'widthPerCut', factor: 0.5, figures: [{ key: 'width.perCutMm', now: 0.254, needed: 0.127 }] },
      ],
    };
    const table = accuracyFigures(needed, 'inch');
    expect(column(table, 'Unit')).toEqual(['°', 'in']);
    expect(column(table, 'Now')).toEqual([0.1, 0.01]);
    expect(column(table, 'Needed alone')).toEqual([0.05, null]);
    expect(column(table, 'Needed together')).toEqual([null, 0.005]);
    expect(column(table, 'Good if perfect')).toEqual([97, 85]);
  });

  test('of a test piece that cannot be used are left out', () => {
    const pieces = TEST_PIECE_KINDS.map((kind, k) => {
      return { kind, figures: testPieceFigures(project, 0, kind), refusal: k === 1 ? 'It cannot be used.' : null };
    });
    const rows = rowsOf(testPieceTable(pieces, 'metric'));
    expect(rows[1]?.slice(1)).toEqual([null, null, null]);
    expect(Number(rows[0]?.[2])).toBeGreaterThan(0);
  });
});
