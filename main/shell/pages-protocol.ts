import { protocol } from 'electron';
import { PAGE_HEADERS } from '../contract/page-headers';
import type { PageFile } from '../files/page-files';

/** The pages' own address. A scheme of ours keeps them off `file://`, where every file of the machine would be near. */
export const PAGES_ORIGIN = 'app://ringtrue';

/** Must run before the app is ready. */
export function registerPagesScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Answers `app://ringtrue/…` from the table of built pages and nothing else. */
export function servePages(files: ReadonlyMap<string, PageFile>): void {
  protocol.handle('app', (request) => {
    const { host, pathname } = new URL(request.url);
    const file = host === 'ringtrue' && request.method === 'GET' ? files.get(pathname) : undefined;
    if (!file) return new Response(null, { status: 404, headers: PAGE_HEADERS });
    return new Response(file.bytes, { headers: { ...PAGE_HEADERS, 'Content-Type': file.contentType } });
  });
}

/** @returns whether an address belongs to the pages */
export function isPagesAddress(address: string): boolean {
  return URL.canParse(address) && address.startsWith(`${PAGES_ORIGIN}/`);
}
