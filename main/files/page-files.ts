import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';

/** One built file of the pages, held in memory. */
export interface PageFile {
  bytes: Uint8Array<ArrayBuffer>;
  contentType: string;
}

const CONTENT_TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.json': 'application/json; charset=utf-8',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
};

/**
 * The pages as a fixed table from address path to file, read once. Serving is a look-up in this table, so no address,
 * however spelt, leads to another file of the machine.
 *
 * @param folder the built pages, with an index.html
 * @returns keys such as `/assets/index-1a2b.js`; index.html stands under `/` as well
 * @throws {Error} when the folder has no index.html or a file of an unknown kind
 */
export async function readPageFiles(folder: string): Promise<ReadonlyMap<string, PageFile>> {
  const files = new Map<string, PageFile>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    const address = path.slice(folder.length).replaceAll('\\', '/').replace(/^\/*/, '/');
    const contentType = CONTENT_TYPES[extname(entry.name)];
    if (!contentType) throw new Error(`${path} is of a kind the pages do not use. Add its content type or remove it.`);
    files.set(address, { bytes: new Uint8Array(await readFile(path)), contentType });
  }
  const index = files.get('/index.html');
  if (!index) throw new Error(`${folder} holds no index.html. Run "npm run build".`);
  return files.set('/', index);
}
