import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { PAGE_HEADERS } from '../contract/page-headers';
import { readPageFiles } from '../files/page-files';
import { Places } from '../files/places';
import { Admission } from './admission';
import { readBody } from './read-body';

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
  /** The project file to open at the start and to save to; no other file can be written. */
  startFile?: string | undefined;
}

/**
 * Serves the pages on 127.0.0.1, on a port that the system picks, to nobody but the browser let in.
 *
 * @throws {Error} when the pages are not built or no port can be had
 */
export async function startLocalHost({ pagesFolder, startFile }: LocalHostOptions): Promise<LocalHost> {
  const files = await readPageFiles(pagesFolder);
  const places = new Places();
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
    if (path === '/api/save') {
      if (request.method !== 'POST') return sendText(response, 405, 'Saving is asked for with POST.');
      return save(request, response);
    }
    if (!reads) return sendText(response, 405, 'Only GET and HEAD are answered here.');
    if (path === '/api/start-file') return sendJson(response, 200, startFile ? await places.read(startFile) : null);
    const file = files.get(path);
    if (!file) return sendText(response, 404, 'There is nothing at this address.');
    response.writeHead(200, {
      ...PAGE_HEADERS,
      'Content-Type': file.contentType,
      'Content-Length': file.bytes.length,
    });
    response.end(request.method === 'HEAD' ? undefined : file.bytes);
  }

  async function save(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const text = await readBody(request);
    if (text === null) {
      response.setHeader('Connection', 'close');
      return sendJson(response, 413, {
        problem: 'The project is larger than a project file may be. It was not saved.',
      });
    }
    const place = request.headers['x-ringtrue-place'];
    const saved = await places.write(typeof place === 'string' ? place : '', text);
    sendJson(response, 'problem' in saved ? 409 : 200, saved);
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

function sendText(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { ...PAGE_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' }).end(`${sentence}\n`);
}

function sendJson(response: ServerResponse, status: number, value: unknown): void {
  const type = 'application/json; charset=utf-8';
  response.writeHead(status, { ...PAGE_HEADERS, 'Content-Type': type }).end(JSON.stringify(value));
}
