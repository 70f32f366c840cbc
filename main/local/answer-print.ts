import type { IncomingMessage, ServerResponse } from 'node:http';
import { PAGE_HEADERS } from '../contract/page-headers';
import { CannotPrint, printPdf } from '../print/print-pdf';
import { readBody } from './read-body';
import { sendJson, sendText } from './send-answer';

/** Answers the HTML of a sheet with its PDF; a failure is a sentence under `problem`, with status 409. */
export async function answerPrint(request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== 'POST') return sendText(response, 405, 'This is asked for with POST.');
  const html = await readBody(request);
  if (html === null) {
    response.setHeader('Connection', 'close');
    return sendJson(response, 413, { problem: 'The sheet is too large to be printed.' });
  }
  try {
    const pdf = await printPdf(html);
    const headers = { ...PAGE_HEADERS, 'Content-Type': 'application/pdf', 'Content-Length': pdf.length };
    response.writeHead(200, headers).end(pdf);
  } catch (error) {
    if (!(error instanceof CannotPrint)) throw error;
    sendJson(response, 409, { problem: error.message });
  }
}
