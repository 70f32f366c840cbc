/** A table on a sheet: first column names, the others figures. */
import type { TextTable } from '../../sim/wording/tables';
import { lengthsOnOneLine } from '../parts/lengths-on-one-line';

export interface SheetTable extends TextTable {
  /** Said above it; a table without heads is called by its first one. */
  caption?: string;
  /** How many of the first columns hold words and not figures; one unless told otherwise. */
  wordColumns?: number;
  /** It goes on where the table before it ends. */
  goesOn?: boolean;
}

/** A table of no more rows is kept on one page. */
const SHORT_ROWS = 20;

/** "2 in 1,000" stays on one line. */
const COUNTED = /(\d) in (\d)/g;

/** The figure, and in brackets how far it may be off. */
function Cell({ text }: { text: string }) {
  const [, figure = text, interval = ''] = /^(.*?) (\(.*\))$/.exec(text) ?? [];
  return (
    <>
      {lengthsOnOneLine(figure).replace(COUNTED, '$1\u00a0in\u00a0$2')}
      {interval !== '' && <span className="sheet-interval"> {lengthsOnOneLine(interval)}</span>}
    </>
  );
}

export function SheetTableView({ table }: { table: SheetTable }) {
  const { head, rows, wordColumns = 1, goesOn = false } = table;
  const hasHead = !goesOn && head.some((cell, column) => column > 0 && cell !== '');
  const caption = table.caption ?? (hasHead ? undefined : head[0]);
  const kind = (column: number): string | undefined => (column < wordColumns ? 'words' : undefined);
  return (
    <table
      className={wordColumns === head.length ? 'sheet-table of-words' : 'sheet-table'}
      data-short={rows.length <= SHORT_ROWS || undefined}
    >
      {caption !== undefined && <caption>{caption}</caption>}
      {hasHead && (
        <thead>
          <tr>
            {head.map((cell, column) => (
              <th key={cell} scope="col" className={kind(column)}>
                {cell}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {rows.map(([name = '', ...cells], row) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of one table may share their name.
          <tr key={`${row} ${name}`}>
            <th scope="row" className="words">
              {lengthsOnOneLine(name)}
            </th>
            {cells.map((cell, column) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its place.
              <td key={column} className={kind(column + 1)}>
                <Cell text={cell} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
