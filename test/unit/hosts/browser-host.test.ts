// @vitest-environment happy-dom
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { startLocalHost } from '../../../main/local/local-host';
import { browserHost } from '../../../renderer/host/browser-host';
import { describeHost } from '../../support/host-contract';
import { enter, sendRaw } from '../../support/raw-request';
import { scratchFolder } from '../../support/scratch-folder';

const stops: (() => Promise<void>)[] = [];

afterEach(async () => {
  vi.unstubAllGlobals();
  for (const stop of stops.splice(0)) await stop();
});

/** A page's `fetch` as a browser would do it: to the page's own host, with its cookie and its origin. */
function fetchFrom(origin: string, cookie: string): typeof fetch {
  return async (path, { method = 'GET', headers = {}, body } = {}) => {
    const own = method === 'GET' ? { cookie } : { cookie, origin };
    const text = typeof body === 'string' ? body : await (body as Blob | undefined)?.text();
    const sent = { method, path: String(path), headers: { ...(headers as Record<string, string>), ...own } };
    const answer = await sendRaw(origin, text === undefined ? sent : { ...sent, body: text });
    const type = { 'content-type': answer.headers['content-type'] ?? '' };
    return new Response(answer.text, { status: answer.status, headers: type });
  };
}

async function start(startFile: string | null, stateFolder = scratchFolder()) {
  const pagesFolder = join(scratchFolder(), 'pages');
  mkdirSync(pagesFolder);
  writeFileSync(join(pagesFolder, 'index.html'), '<!doctype html>');
  const local = await startLocalHost({ pagesFolder, startFile: startFile ?? undefined, stateFolder });
  stops.push(() => local.close());
  vi.stubGlobal('fetch', fetchFrom(local.origin, await enter(local.origin, local.address('once'))));
  return browserHost();
}

describeHost('the browser host', start);

describe('the browser host', () => {
  it('says that the program behind the window has ended', async () => {
    const host = await start(null);
    await stops.pop()?.();
    expect(await host.openedAtStart()).toEqual({ problem: expect.stringContaining('Start Ringtrue again.') });
  });

  it('says what to do where no browser can print a sheet', async () => {
    const host = await start(null);
    vi.stubEnv('RINGTRUE_CHROMIUM', join(scratchFolder(), 'no-browser'));
    expect(await host.printPdf({ name: 'piece.pdf', html: '<!doctype html>' })).toEqual({
      problem: expect.stringMatching(
        /no-browser, which is not a program\. Give the path of a Chromium-family browser\.$/,
      ),
    });
    vi.unstubAllEnvs();
  });

  it('opens the file that the person chooses, and nothing when they change their mind', async () => {
    const host = await start(null);
    const click = vi.spyOn(HTMLInputElement.prototype, 'click');
    click.mockImplementationOnce(function (this: HTMLInputElement) {
      const file = new File(['{ "title": "Ø" }'], 'chosen.json');
      Object.defineProperty(this, 'files', { value: [file] });
      this.dispatchEvent(new Event('change'));
    });
    expect(await host.open()).toEqual({ name: 'chosen.json', text: '{ "title": "Ø" }', place: null });
    click.mockImplementationOnce(function (this: HTMLInputElement) {
      this.dispatchEvent(new Event('cancel'));
    });
    expect(await host.open()).toBeNull();
    expect(document.querySelector('input')).toBeNull();
  });

  it.each([
    ['rings.csv', 'text/csv;charset=utf-8'],
    ['chart.png', 'image/png'],
  ])('hands %s over as a download, byte by byte and of its kind', async (name, type) => {
    const host = await start(null);
    const blobs: Blob[] = [];
    vi.stubGlobal('URL', {
      createObjectURL: (blob: Blob) => `blob:${blobs.push(blob)}`,
      revokeObjectURL: () => {},
    });
    const clicked: string[] = [];
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      clicked.push(this.download);
    });
    const bytes = Uint8Array.from([0xef, 0xbb, 0xbf, 0x41]);
    expect(await host.exportFile({ name, bytes })).toEqual({ name, place: null });
    expect(clicked).toEqual([name]);
    expect(blobs[0]?.type.replace('; ', ';')).toBe(type);
    expect(new Uint8Array((await blobs[0]?.arrayBuffer()) ?? new ArrayBuffer(0))).toEqual(bytes);
    vi.restoreAllMocks();
  });

  it('asks before the window closes only while there are edits', async () => {
    const host = await start(null);
    const leave = () => window.dispatchEvent(new Event('beforeunload', { cancelable: true }));
    expect(leave()).toBe(true);
    host.setEdited(true);
    expect(leave()).toBe(false);
    host.setEdited(false);
    expect(leave()).toBe(true);
  });
});
