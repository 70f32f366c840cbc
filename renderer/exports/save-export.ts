/** Gives what was made to the person, under a name that says what it is. */
import type { Host } from '../../main/contract/host';
import { csvText } from '../../sim/export/csv';
import type { FigureTable } from '../../sim/export/figure-table';
import type { Project } from '../../sim/project/document';
import { PROGRAM_VERSION } from '../../sim/version';
import { announce, refuse } from '../state/view-store';
import { fileNameFor } from './file-name';

export type Ending = 'csv' | 'svg' | 'png' | 'json';

const stem = (text: string): string => fileNameFor(text).split('.')[0] ?? '';

/** "lantern-base-which-joints-gape.svg". */
export function exportName({ title }: Project, what: string, ending: Ending): string {
  return `${stem(title)}-${stem(what)}.${ending}`;
}

export function csvOf(table: FigureTable, what: string, { title, run }: Project): string {
  return csvText(table, { project: title, table: what, seed: run.seed });
}

/** "Lantern base, seed 7, Ringtrue 0.1.0." */
export function originText({ title, run }: Project): string {
  return `${title}, seed ${run.seed}, Ringtrue ${PROGRAM_VERSION}.`;
}

/** @param make what goes into the file; a failure is told in a dialog */
export async function saveExport(
  host: Host,
  name: string,
  make: () => string | Promise<Uint8Array<ArrayBuffer>>,
): Promise<void> {
  try {
    const contents = await make();
    const bytes = typeof contents === 'string' ? new TextEncoder().encode(contents) : contents;
    const answer = await host.exportFile({ name, bytes });
    if (answer === null) return;
    if ('problem' in answer) refuse(`${name} was not saved`, [answer.problem]);
    else announce(`${answer.name} is saved.`);
  } catch (error) {
    refuse(`${name} was not saved`, [error instanceof Error ? error.message : String(error)]);
  }
}
