/** A browser without a window that is talked to over a pair of pipes, and is gone when it is closed. */
import type { Readable, Writable } from 'node:stream';
import { startThrowawayBrowser } from '../local/throwaway-browser';

export interface BrowserPipe {
  /** Asks for one thing of the browser's debugging protocol; `session` is the page it concerns. */
  ask(method: string, params?: object, session?: string): Promise<Record<string, unknown>>;
  close(): Promise<void>;
}

const FLAGS = ['--headless', '--remote-debugging-pipe', '--disable-gpu', '--disable-extensions'];

const CLOSES_WITHIN_MS = 5000;

interface Waiting {
  resolve(result: Record<string, unknown>): void;
  reject(error: Error): void;
}

interface Message {
  id?: number;
  result?: Record<string, unknown>;
  error?: { message: string };
}

/** @param program the browser's path */
export function openBrowserPipe(program: string): BrowserPipe {
  const started = startThrowawayBrowser(program, 'print', FLAGS, ['ignore', 'ignore', 'ignore', 'pipe', 'pipe']);
  const { process: browser, ended, gone } = started;
  const toBrowser = browser.stdio[3] as Writable;
  const fromBrowser = browser.stdio[4] as Readable;
  const waiting = new Map<number, Waiting>();
  let asked = 0;

  const fail = (why: string): void => {
    for (const { reject } of waiting.values()) reject(new Error(why));
    waiting.clear();
  };
  toBrowser.on('error', () => fail('the browser took no more orders'));
  void ended.then(() => fail('the browser ended before it had printed'));
  listen(fromBrowser, ({ id, result, error }) => {
    const asker = id === undefined ? undefined : waiting.get(id);
    if (id === undefined || asker === undefined) return;
    waiting.delete(id);
    if (error) asker.reject(new Error(error.message));
    else asker.resolve(result ?? {});
  });

  const ask: BrowserPipe['ask'] = (method, params = {}, session) => {
    const id = ++asked;
    const answer = new Promise<Record<string, unknown>>((resolve, reject) => waiting.set(id, { resolve, reject }));
    if (browser.exitCode !== null) fail('the browser ended before it had printed');
    else toBrowser.write(`${JSON.stringify({ id, method, params, ...(session && { sessionId: session }) })}\0`);
    return answer;
  };

  return {
    ask,
    async close() {
      ask('Browser.close').catch(() => {});
      const kill = setTimeout(() => browser.kill('SIGKILL'), CLOSES_WITHIN_MS);
      await ended;
      clearTimeout(kill);
      await gone;
    },
  };
}

/** Messages are JSON texts with a zero byte after each. */
function listen(stream: Readable, onMessage: (message: Message) => void): void {
  let pieces: Buffer[] = [];
  stream.on('data', (piece: Buffer) => {
    let from = 0;
    for (let end = piece.indexOf(0); end >= 0; end = piece.indexOf(0, from)) {
      pieces.push(piece.subarray(from, end));
      onMessage(JSON.parse(Buffer.concat(pieces).toString('utf8')) as Message);
      pieces = [];
      from = end + 1;
    }
    pieces.push(piece.subarray(from));
  });
}
