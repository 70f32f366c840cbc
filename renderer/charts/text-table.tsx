/** A table of the shared wording as the pages show it: first column names, the others figures. */
import type { TextTable } from '../../sim/wording/tables';
import { ExplainedHead } from '../inputs/explained';
import { lengthsOnOneLine } from '../parts/lengths-on-one-line';

interface TextTableViewProps {
  table: TextTable;
  /** In place of the first head of the table. */
  firstHead?: string;
  /** Place of the row that is marked elsewhere on the page. */
  marked?: number | null;
  onMark?: (row: number) => void;
}

export function TextTableView({ table, firstHead, marked = null, onMark }: TextTableViewProps) {
  const head = table.head.map((cell, column) => (column === 0 && firstHead !== undefined ? firstHead : cell));
  return (
    <table>
      <thead>
        <tr>
          {head.map((cell) => (
            <th key={cell} scope="col">
              {cell}
              <ExplainedHead head={cell} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map(([name = '', ...cells], row) => (
          <tr
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of one source share their name.
            key={`${row} ${name}`}
            className={row === marked ? 'marked' : undefined}
            aria-current={row === marked || undefined}
            onPointerEnter={onMark && (() => onMark(row))}
          >
            {name === '' ? <td /> : <th scope="row">{lengthsOnOneLine(name)}</th>}
            {cells.map((cell, column) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its place.
              <td key={column}>{lengthsOnOneLine(cell)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
