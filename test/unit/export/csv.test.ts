import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvText } from '../../../sim/export/csv';
import type { Figure } from '../../../sim/export/figure-table';
import { PROGRAM_VERSION } from '../../../sim/version';
import { readCsv, readTable } from '../../support/read-csv';

const ORIGIN = { project: 'Lantern, "oak"', table: 'Joints', seed: 7 };

function written(rows: Figure[][], columns = rows[0]?.length ?? 2): string {
  const heads = Array.from({ length: columns }, (_, k) => ({ head: `h${k}`, unit: k === 0 ? '' : 'mm' }));
  return csvText({ columns: heads, rows }, ORIGIN);
}

/** Of one figure, as a strict reader finds it. */
function readBack(figure: Figure): string | undefined {
  return readTable(written([[figure, 0]])).rows[0]?.[0];
}

describe('a table as CSV', () => {
  test('begins with the mark of UTF-8 and says project, table, seed and version, then heads and units', () => {
    const text = written([['a', 1.5]]);
    expect([...new TextEncoder().encode(text).subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(readTable(text)).toEqual({
      origin: { Project: 'Lantern, "oak"', Table: 'Joints', Seed: '7', Program: `Ringtrue ${PROGRAM_VERSION}` },
      heads: ['h0', 'h1'],
      units: ['', 'mm'],
      rows: [['a', '1.5']],
    });
  });

  // RFC 4180, section 2: rule 1 (lines end with CRLF) and rule 4 (as many fields on every line).
  test('ends every line with CRLF and has as many fields on each', () => {
    const text = written([['a', 1, null, 'b']]);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(new Set(readCsv(text).map((line) => line.length))).toEqual(new Set([4]));
  });

  test('gives numbers whole: what is read back is the same number to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        expect(Number(readBack(number))).toBe(number === 0 ? 0 : number);
      }),
    );
    expect(readBack(Math.PI)).toBe('3.141592653589793');
  });

  test('leaves empty what there is no figure for', () => {
    for (const figure of [null, Number.NaN, Number.POSITIVE_INFINITY]) expect(readBack(figure)).toBe('');
  });

  // RFC 4180, section 2, rules 5 to 7.
  test('brings any text back as it was, whatever quotes, commas and line breaks it has', () => {
    const harmless = fc.string({ unit: 'grapheme' }).map((text) => `x${text}`);
    const tricky = fc.array(fc.constantFrom('"', ',', '\r', '\n', '\t', ';', ' ', 'Ø', '=', 'a'));
    fc.assert(
      fc.property(harmless, tricky, (text, parts) => {
        const whole = text + parts.join('');
        expect(readBack(whole)).toBe(whole);
      }),
    );
  });

  // OWASP, "CSV Injection": the characters that make a spreadsheet take a field for a formula.
  test.each(['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠'])(
    'marks a text that begins with %j as text, blanks before it or not',
    (first) => {
      for (const before of ['', ' ', '  ', '\u00a0', '\n', '\uFEFF']) {
        const text = `${before}${first}HYPERLINK("x")`;
        expect(readBack(text)).toBe(`'${text}`);
      }
    },
  );

  test('marks titles, heads and units the same way', () => {
    const columns = [
      { head: '=1+1', unit: '@unit' },
      { head: 'plain', unit: '' },
    ];
    const { origin, heads, units } = readTable(
      csvText({ columns, rows: [] }, { project: '=cmd', table: '+t', seed: 1 }),
    );
    expect([origin.Project, origin.Table, heads[0], units[0]]).toEqual(["'=cmd", "'+t", "'=1+1", "'@unit"]);
  });

  test('leaves numbers below zero numbers, and texts with such a letter further on as they are', () => {
    expect(readBack(-0.25)).toBe('-0.25');
    expect(readBack(-1e-7)).toBe('-1e-7');
    expect(readBack('A=B')).toBe('A=B');
    expect(readBack('Marked line - twice')).toBe('Marked line - twice');
  });
});
