import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { PAGE_HEADERS } from '../contract/page-headers';
import { readPageFiles } from '../files/page-files';
import { ProjectFiles } from '../files/project-files';
import { Admission } from './admission';
import { answerFiles } from './answer-files';
import { answerPrint } from './answer-print';
import { sendText } from './send-answer';

/** The running host. */
export interface LocalHost {
  /** `http://127.0.0.1:PORT`, which serves nothing to those who did not come through `address`. */
  readonly origin: string;
  /** An address that lets a browser in, once or as often as wanted. */
  address(use: 'once' | 'often'): string;
  close(): Promise<void>;
}

export interface LocalHostOptions {
  /** The built pages, with an index.html. */
  pagesFolder: string;
  /** The project file to open at the start and to save to; of others only recent ones can be written. */
  startFile?: string | undefined;
  /** The user's own folder for this program. */
  stateFolder: string;
}

/**
 * Serves the pages on 127.0.0.1, on a port that the system picks, to nobody but the browser let in.
 *
 * @throws {Error} when the pages are not built or no port can be had
 */
export async function startLocalHost({ pagesFolder, startFile, stateFolder }: LocalHostOptions): Promise<LocalHost> {
  const files = await readPageFiles(pagesFolder);
  const projectFiles = new ProjectFiles(stateFolder);
  const server = createServer();
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const admission = new Admission((server.address() as AddressInfo).port);

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = (request.url ?? '').split('?', 1)[0] ?? '';
    const refusal = admission.refuseStranger(request);
    if (refusal) return sendText(response, refusal.status, refusal.reason);
    const reads = request.method === 'GET' || request.method === 'HEAD';

    if (path.startsWith('/open/') && reads) {
      const cookie = admission.redeem(path, request);
      if (!cookie) return sendText(response, 403, 'This address is not valid any more. Start Ringtrue again.');
      response.writeHead(303, { ...PAGE_HEADERS, 'Set-Cookie': cookie, Location: '/' }).end();
      return;
    }
    if (!admission.hasKey(request)) {
      return sendText(response, 403, 'Open Ringtrue through the address it printed when it started.');
    }
    if (path === '/api/print-pdf') return answerPrint(request, response);
    if (path.startsWith('/api/')) return answerFiles({ path, request, response, files: projectFiles, startFile });
    if (!reads) return sendText(response, 405, 'Only GET and HEAD are answered here.');
    const file = files.get(path);
    if (!file) return sendText(response, 404, 'There is nothing at this address.');
    response.writeHead(200, {
      ...PAGE_HEADERS,
      'Content-Type': file.contentType,
      'Content-Length': file.bytes.length,
    });
    response.end(request.method === 'HEAD' ? undefined : file.bytes);
  }

  server.on('request', (request, response) => {
    answer(request, response).catch((error: unknown) => {
      process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
      if (!response.headersSent) sendText(response, 500, 'Ringtrue failed to answer; its terminal says why.');
      else response.destroy();
    });
  });

  return {
    origin: admission.origin,
    address: (use) => admission.address(use),
    async close() {
      const closed = once(server, 'close');
      server.close();
      server.closeAllConnections();
      await closed;
    },
  };
}
