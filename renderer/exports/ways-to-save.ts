/** The kinds of files that what is on the page can be kept as. */
import type { Host } from '../../main/contract/host';
import type { FigureTable } from '../../sim/export/figure-table';
import { useDocument } from '../state/document-store';
import { LEFT_OUT } from './paint-page';
import { pictureOf } from './picture';
import { pngOf } from './png';
import { csvOf, exportName, originText, saveExport } from './save-export';
import type { WayToSave } from './save-menu';

export interface Pictured {
  title: string;
  /** Where the page says what is to be seen. */
  description: () => Element | null | undefined;
  /** From top to bottom. */
  blocks: () => readonly Element[];
}

/** Without what the picture leaves out. */
function wordsOf(element: Element | null | undefined): string {
  const copy = element?.cloneNode(true);
  if (!(copy instanceof Element)) return '';
  for (const part of copy.querySelectorAll(LEFT_OUT)) part.remove();
  return (copy.textContent ?? '').trim();
}

/** As a drawing and as a picture. */
export function picturesOf(host: Host, { title, description, blocks }: Pictured): WayToSave[] {
  const picture = () => {
    const { project } = useDocument.getState();
    return pictureOf(blocks(), { title, description: `${wordsOf(description())} ${originText(project)}`.trim() });
  };
  const name = (ending: 'svg' | 'png') => exportName(useDocument.getState().project, title, ending);
  return [
    {
      id: 'svg',
      label: 'SVG',
      note: 'a drawing, sharp at any size',
      save: () => saveExport(host, name('svg'), () => picture().svg),
    },
    {
      id: 'png',
      label: 'PNG',
      note: 'a picture, twice as fine as the screen',
      save: () => saveExport(host, name('png'), async () => pngOf(picture())),
    },
  ];
}

/** As a table for a spreadsheet. */
export function tableOf(host: Host, title: string, table: () => FigureTable): WayToSave {
  const save = (): Promise<void> => {
    const { project } = useDocument.getState();
    return saveExport(host, exportName(project, title, 'csv'), () => csvOf(table(), title, project));
  };
  return { id: 'csv', label: 'CSV', note: 'a table with all digits, for a spreadsheet', save };
}
