import type { IncomingMessage, ServerResponse } from 'node:http';
import { LARGEST_VIEW_CHARACTERS } from '../contract/payloads';
import type { ProjectFiles } from '../files/project-files';
import { readBody } from './read-body';
import { sendJson, sendText } from './send-answer';

/** A request that was let in. */
export interface FileRequest {
  path: string;
  request: IncomingMessage;
  response: ServerResponse;
  files: ProjectFiles;
  startFile: string | undefined;
}

/** One header of the request, with its escapes for letters beyond ASCII undone; '' when absent or wrongly escaped. */
function header(request: IncomingMessage, name: string): string {
  const value = request.headers[name];
  try {
    return typeof value === 'string' ? decodeURIComponent(value) : '';
  } catch {
    return '';
  }
}

type Answer = (asked: FileRequest) => Promise<unknown>;

const READS: Readonly<Record<string, Answer>> = {
  '/api/start-file': async ({ files, startFile }) => (startFile ? files.read(startFile) : null),
  '/api/recent': ({ files }) => files.recent(),
  '/api/kept-view': ({ files }) => files.keptView(),
};

/** Whatever changes something on the disk is asked for with POST, which a page must name its origin for. */
const CHANGES: Readonly<Record<string, Answer>> = {
  '/api/reopen': ({ files, request }) => files.reopen(header(request, 'x-ringtrue-place')),
  '/api/changed-on-disk': ({ files, request }) => files.changedOnDisk(header(request, 'x-ringtrue-place')),
  '/api/recovery': ({ files }) => files.recovery(),
  '/api/drop-recovery': async ({ files }) => {
    await files.dropRecovery();
    return null;
  },
};

/** The same, with a text as its body: of a project, or of what is kept about the view. */
const TEXTS: Readonly<Record<string, (asked: FileRequest, text: string) => Promise<unknown>>> = {
  '/api/save': ({ files, request }, text) => {
    const overwrite = header(request, 'x-ringtrue-overwrite') === 'yes';
    return files.save({ name: '', text, place: header(request, 'x-ringtrue-place'), overwrite });
  },
  '/api/keep-recovery': ({ files, request }, text) => {
    const name = header(request, 'x-ringtrue-name').slice(0, 255) || 'project.ringtrue.json';
    return files.keepRecovery({ name, text, place: header(request, 'x-ringtrue-place') || null });
  },
  '/api/keep-view': async ({ files }, text) => {
    if (text.length <= LARGEST_VIEW_CHARACTERS) await files.keepView(text);
    return null;
  },
};

/** Answers the verbs of `Host` for the pages in the browser. A failure is a sentence under `problem`, with status 409. */
export async function answerFiles(asked: FileRequest): Promise<void> {
  const { path, request, response } = asked;
  const read = READS[path];
  const change = CHANGES[path];
  const withText = TEXTS[path];
  if (!read && !change && !withText) return sendText(response, 404, 'There is nothing at this address.');
  if (read) {
    if (request.method !== 'GET') return sendText(response, 405, 'This is asked for with GET.');
    return sendJson(response, 200, await read(asked));
  }
  if (request.method !== 'POST') return sendText(response, 405, 'This is asked for with POST.');
  let answer: unknown;
  if (change) answer = await change(asked);
  if (withText) {
    const text = await readBody(request);
    if (text === null) {
      response.setHeader('Connection', 'close');
      return sendJson(response, 413, {
        problem: 'The project is larger than a project file may be. It was not saved.',
      });
    }
    answer = await withText(asked, text);
  }
  const failed = typeof answer === 'object' && answer !== null && 'problem' in answer;
  sendJson(response, failed ? 409 : 200, answer);
}
