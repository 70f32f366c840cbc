/** Keeps a table that stands by itself. */
import type { FigureTable } from '../../sim/export/figure-table';
import { useHost } from '../parts/host-context';
import { SaveMenu, type WayToSave } from './save-menu';
import { tableOf } from './ways-to-save';

interface SaveTableProps {
  /** Its heading. */
  what: string;
  /** null while there is none. */
  table: (() => FigureTable) | null;
  more?: readonly WayToSave[];
}

export function SaveTable({ what, table, more = [] }: SaveTableProps) {
  const host = useHost();
  const ways = table === null ? [] : [tableOf(host, what, table)];
  return <SaveMenu what={what} ways={[...ways, ...more]} isDisabled={table === null} />;
}
