import { describe, expect, it } from 'vitest';
import { ringGeometry } from '../../../sim/geometry/ring';
import { SOURCE_NAMES } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject } from '../../../sim/project/example';
import type { Share } from '../../../sim/statistics/estimates';
import { gapWithInterval, lengthWithInterval } from '../../../sim/wording/intervals';
import { gapRows } from '../../../sim/wording/report';
import { SOURCE_WORDS } from '../../../sim/wording/sources';
import { budgetTable, geometryTable, methodTable, plainText, predictionTable } from '../../../sim/wording/tables';
import { resultLike, share } from './result-like';

describe('the method table', () => {
  it('has a row a method, with as many cells as the head', () => {
    const table = methodTable([resultLike('Line'), resultLike('Stop')], 'metric');
    expect(table.rows.map((row) => row[0])).toEqual(['Line', 'Stop']);
    for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    expect(table.rows[0]).toEqual([
      'Line',
      '83 in 100 (82 to 84)',
      '0.165 mm (0.164 to 0.166)',
      'none (at most 4 in 10,000)',
      '75 min (74 to 76)',
      '80 (79 to 81)',
    ]);
  });

  it('says in words what has no number', () => {
    const cost = { perGoodPiece: null, low: null, high: null, minutesPerPiece: null, testRounds: 0 };
    const gap = { mean: 3, sd: 1, p50: 3, p90: 4, p95: 5, p99: 6 };
    const [row] = methodTable([resultLike('Bad', { cost, showGapMm: gap, yield: share(0, 0, 0.0004) })], 'inch').rows;
    expect(row?.slice(2)).toEqual(['over 0.079 in', 'none (at most 4 in 10,000)', '–', 'fewer than 1 good in 1,000']);
  });
});

describe('the other tables', () => {
  it('tell the ring as published trade settings have it', () => {
    // Twelve upright sides: tilt 15°, 75° from flat, no swing (tilt and gauge tables of the trade).
    const rows = new Map(geometryTable(ringGeometry(exampleProject().piece), 'metric').rows.map(([a, b]) => [a, b]));
    expect(rows.get('Blade tilt from square')).toBe('15°');
    expect(rows.get('Blade tilt from flat')).toBe('75°');
    expect(rows.get('Gauge swing from square')).toBe('0°');
    expect(rows.get('Clear opening, narrow end')).toBe('250 mm');
  });

  it('tell a flat frame by its members and its one opening', () => {
    // A hexagon of side 300 lies 300·√3 = 519.62 across the flats; two members of 60 leave 399.62 (closed form).
    const { piece } = mirrorFrameProject();
    const frame = { ...piece, sides: 6, size: { by: 'staveWidth', mm: 300 } as const, heightMm: 60 };
    const rows = new Map(geometryTable(ringGeometry(frame), 'metric').rows.map(([a, b]) => [a, b]));
    expect(rows.get('Outside flats')).toBe('519.62 mm');
    expect(rows.get('Clear opening')).toBe('399.62 mm');
    expect(rows.get('Member length, outer edge')).toBe('300 mm');
    // 300 − 2·60·tan 30°.
    expect(rows.get('Member length, inner edge')).toBe('230.72 mm');
    expect([...rows.keys()].filter((name) => /wide|narrow|height/.test(name ?? ''))).toEqual([]);
  });

  it('tell one method figure by figure, in either unit', () => {
    const metric = predictionTable(resultLike('Line'), 'metric');
    const inch = predictionTable(resultLike('Line'), 'inch');
    expect(metric.rows.map((row) => row[0])).toEqual(inch.rows.map((row) => row[0]));
    expect(metric.rows.flat().filter((cell) => / mm\b/.test(cell))).toHaveLength(13);
    expect(inch.rows.flat().filter((cell) => /\d in\b/.test(cell) && !/\d in \d/.test(cell))).toHaveLength(13);
    expect(inch.rows.flat().join(' ')).not.toContain(' mm');
  });

  it('tell every simulated figure with its interval, no finer than that allows', () => {
    const { rows } = predictionTable(resultLike('Line'), 'metric');
    const told = new Map(rows.map(([name, text]) => [name, text]));
    // What is known exactly: counts, and what follows from the geometry.
    for (const exact of ['Rings simulated', 'Cuts', 'Strip used by one stave', 'Strip needed']) {
      expect(told.get(exact)).not.toContain('(');
      told.delete(exact);
    }
    for (const [name, text] of told) expect(text, name).toMatch(/ \((\S+ to \S+|at most .+|but for at most .+)\)$/);
    expect(told.get('Worst hidden gap, 95 of 100 under')).toBe('0.160 mm (0.156 to 0.164)');
    expect(told.get('Mouth at dry fit, 5 of 100 under')).toBe('-10.2 mm (-10.4 to -10.0)');
    expect(told.get('Clear opening, middle ring')).toBe('249.81 mm (249.77 to 249.85)');
    expect(told.get('Out of round, 95 of 100 under')).toBe('1.40 mm (1.37 to 1.43)');
    expect(told.get('Step between staves, 95 of 100 under')).toBe('0.140 mm (0.138 to 0.142)');
    expect(told.get('Time for a good piece')).toBe('75 min (74 to 76)');
  });

  it('say nothing of an insert where there is none', () => {
    const names = (insertFits: Share) =>
      predictionTable(resultLike('Line', { insertFits }), 'metric').rows.map(([name]) => name);
    expect(names(share(1))).not.toContain('Insert fits');
    expect(names(share(1, 0.9996))).toContain('Insert fits');
  });

  it('tell the gaps of a ring on either side with their intervals', () => {
    const { head, rows } = gapRows(resultLike('Line'), 'metric');
    for (const row of rows) {
      expect(row).toHaveLength(head.length);
      for (const cell of row.slice(1)) expect(cell).toMatch(/^\d\.\d+ mm \(\d\.\d+ to \d\.\d+\)$/);
    }
    expect(rows[3]).toContain('0.250 mm (0.246 to 0.254)');
  });

  it('bound what is no longer told, and say so where a figure is known to its last digit', () => {
    expect(gapWithInterval(1.95, { low: 1.89, high: 2.02 }, 'metric')).toBe('1.95 mm (1.89 to over 2)');
    expect(gapWithInterval(3, { low: 2.5, high: 3.5 }, 'metric')).toBe('over 2 mm');
    expect(lengthWithInterval(250, { low: 249.9999, high: 250.0001 }, 'metric')).toBe(
      '250.000 mm (250.000 to 250.000)',
    );
    expect(gapWithInterval(0, { low: 0, high: 0 }, 'inch')).toBe('0.0000 in (0.0000 to 0.0000)');
    expect(lengthWithInterval(254, { low: 251.46, high: 256.54 }, 'inch')).toBe('10.0 in (9.9 to 10.1)');
  });

  it('order the budget by share and leave out what has none', () => {
    const budget = [
      { source: 'kerf' as const, varianceShare: 0.004, showGapP95WithoutMm: 0.16 },
      { source: 'snags' as const, varianceShare: 0, showGapP95WithoutMm: 0.16 },
      { source: 'tiltShared' as const, varianceShare: 0.9, showGapP95WithoutMm: 0.03 },
    ];
    expect(budgetTable(resultLike('Line'), 'metric')).toBeNull();
    expect(budgetTable(resultLike('Line', { budget }), 'metric')?.rows).toEqual([
      ['Tilt setting', '90 %', '0.03 mm'],
      ['Kerf', 'under 1 %', '0.16 mm'],
    ]);
  });

  it('line up for a terminal without blanks at the line ends', () => {
    expect(
      plainText({
        head: ['a', ''],
        rows: [
          ['long', 'x'],
          ['b', ''],
        ],
      }),
    ).toBe('a\nlong  x\nb');
  });
});

describe('words for every source', () => {
  it('are there, differ, and the explanation is a sentence', () => {
    const words = SOURCE_NAMES.map((name) => SOURCE_WORDS[name]);
    expect(new Set(words.map(({ label }) => label)).size).toBe(SOURCE_NAMES.length);
    for (const { label, explanation } of words) {
      expect(label).toMatch(/^[A-Z]/);
      expect(explanation).toMatch(/^[A-Z].*\.$/);
    }
  });
});
