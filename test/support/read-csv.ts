/**
 * Reads CSV by the letter of RFC 4180, section 2, field by field; shares nothing with the writer.
 *
 * @returns the fields line by line; a mark of UTF-8 at the start is taken off
 * @throws Error where the text is no CSV
 */
export function readCsv(text: string): string[][] {
  const lines: string[][] = [[]];
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const token = /"((?:[^"]|"")*)"(,|\r\n|$)|([^",\r\n]*)(,|\r\n|$)/gy;
  while (token.lastIndex < body.length) {
    const at = token.lastIndex;
    const found = token.exec(body);
    if (found === null) throw new Error(`No field at character ${at}: ${JSON.stringify(body.slice(at, at + 20))}`);
    const [, quoted, endOfQuoted, plain = '', endOfPlain] = found;
    lines.at(-1)?.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    const end = endOfQuoted ?? endOfPlain;
    if (end === '\r\n') lines.push([]);
    else if (end === '') return lines;
  }
  if (lines.at(-1)?.length === 0) lines.pop();
  return lines;
}

export interface ReadTable {
  /** The lines before the heads, by their first field. */
  origin: Record<string, string>;
  heads: string[];
  units: string[];
  rows: string[][];
}

const ORIGIN_LINES = 4;

/** A table as the program lays it out; the layout is written down in the README. */
export function readTable(text: string): ReadTable {
  const [...lines] = readCsv(text);
  const origin = Object.fromEntries(lines.slice(0, ORIGIN_LINES).map(([name = '', value = '']) => [name, value]));
  const [heads = [], units = [], ...rows] = lines.slice(ORIGIN_LINES);
  return { origin, heads, units, rows };
}
