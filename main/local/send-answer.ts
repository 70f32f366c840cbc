import type { ServerResponse } from 'node:http';
import { PAGE_HEADERS } from '../contract/page-headers';

export function sendText(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { ...PAGE_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' }).end(`${sentence}\n`);
}

export function sendJson(response: ServerResponse, status: number, value: unknown): void {
  const type = 'application/json; charset=utf-8';
  response.writeHead(status, { ...PAGE_HEADERS, 'Content-Type': type }).end(JSON.stringify(value));
}
