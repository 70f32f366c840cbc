import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt, ROOT } from '../../main/ready.mjs';

/** @returns the address of the program of a worker thread, built as for shipping; the others lie beside it */
export async function shippedPrograms(): Promise<URL> {
  await ensureBuilt();
  return pathToFileURL(join(ROOT, 'dist', 'main', 'task-worker.js'));
}
