/**
 * CSV that any spreadsheet reads: UTF-8 with its mark, lines ended by CR LF, fields and quotes as in RFC 4180, a point
 * before the decimals. Four lines say where the figures come from, then follow the heads, the units and the figures.
 */
import { PROGRAM_VERSION } from '../version';
import type { Figure, FigureTable } from './figure-table';

/** What the figures of a table follow from. */
export interface FigureOrigin {
  project: string;
  /** What the table is of. */
  table: string;
  seed: number;
}

/** Tells a spreadsheet that the text is UTF-8. */
export const UTF8_MARK = '\uFEFF';

const LINE_END = '\r\n';

/** A spreadsheet takes a text for a formula by how it begins, whatever blanks or wide letters it is dressed in. */
const LOOKS_LIKE_FORMULA = /^[\s\uFEFF]*[=+\-@\t\r＝＋－＠]/u;

const NEEDS_QUOTES = /[",;\r\n\t]|^\s|\s$/;

function field(figure: Figure): string {
  if (figure === null) return '';
  if (typeof figure === 'number') return Number.isFinite(figure) ? String(figure) : '';
  // Shown by a spreadsheet as text, without the apostrophe.
  const text = LOOKS_LIKE_FORMULA.test(figure) ? `'${figure}` : figure;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Every line has as many fields as the table has columns, and at least two. */
export function csvText({ columns, rows }: FigureTable, { project, table, seed }: FigureOrigin): string {
  const width = Math.max(2, columns.length);
  const line = (figures: readonly Figure[]): string =>
    Array.from({ length: width }, (_, k) => field(figures[k] ?? null)).join(',') + LINE_END;
  const lines = [
    ['Project', project],
    ['Table', table],
    ['Seed', seed],
    ['Program', `Ringtrue ${PROGRAM_VERSION}`],
    columns.map(({ head }) => head),
    columns.map(({ unit }) => unit),
  ].map(line);
  for (const row of rows) lines.push(line(row));
  return UTF8_MARK + lines.join('');
}
