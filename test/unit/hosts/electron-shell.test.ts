import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { CHANNELS, type SpokenVerb } from '../../../main/contract/channels';
import type { Host } from '../../../main/contract/host';
import type { Payload } from '../../../main/contract/payloads';
import { ProjectFiles } from '../../../main/files/project-files';
import { answerChannels } from '../../../main/shell/answer-channels';
import { servePages } from '../../../main/shell/pages-protocol';
import { refuseOtherPages, refusePermissions } from '../../../main/shell/refuse-foreign';
import { openShellWindow, type ShellWindow } from '../../../main/shell/window';
import { electronHost } from '../../../renderer/host/electron-host';
import { type BrowserWindow, ipcRenderer, seen } from '../../support/electron-double';
import { describeHost } from '../../support/host-contract';
import { scratchFolder } from '../../support/scratch-folder';
import '../../../main/shell/preload';

vi.mock('electron', () => import('../../support/electron-double'));

/** For each verb the pages speak with, what the shell takes from them. */
const FITTING: { readonly [Verb in SpokenVerb]: Payload<Verb> } = {
  openedAtStart: undefined,
  open: undefined,
  openDropped: '/none/piece.json',
  reopen: 'none',
  changedOnDisk: 'none',
  recent: undefined,
  save: { name: 'a.json', text: 'a', place: 'none', overwrite: false },
  keepRecovery: { name: 'a.json', text: 'a', place: null },
  recovery: undefined,
  dropRecovery: undefined,
  printPdf: { name: 'a.pdf', html: '' },
  exportFile: { name: 'a.csv', bytes: new Uint8Array(1) },
  keptView: undefined,
  keepView: '{}',
  setMenu: [],
  setProgress: null,
  setEdited: false,
};

let shellWindow: ShellWindow;

const onEditsGivenUp = vi.fn(async () => {});

async function start(startFile: string | null, stateFolder = scratchFolder()): Promise<Host> {
  shellWindow = openShellWindow({ onEditsGivenUp, placeFile: join(scratchFolder(), 'window.json') });
  answerChannels(shellWindow, new ProjectFiles(stateFolder), () => startFile);
  return electronHost(seen.exposed.get('ringtrueHost') as Host);
}

/** The window as the double knows it. */
function doubledWindow(): BrowserWindow {
  return seen.windows.at(-1)!;
}

beforeEach(() => {
  seen.windows.length = 0;
  seen.stranger = undefined;
});

describeHost('the Electron shell', start);

describe('the Electron shell', () => {
  it('asks where to save, writes there, and gives a place for the next time', async () => {
    const host = await start(null);
    expect(await host.save({ name: 'piece.json', text: 'a', place: null })).toBeNull();
    const filePath = join(scratchFolder(), 'chosen.json');
    seen.saveAnswer = { canceled: false, filePath };
    const saved = await host.save({ name: 'piece.json', text: 'b', place: null });
    if (!saved || 'problem' in saved) throw new Error('not saved');
    expect(saved.name).toBe('chosen.json');
    await host.save({ name: saved.name, text: 'c', place: saved.place });
    expect(readFileSync(filePath, 'utf8')).toBe('c');
  });

  it('writes an exported file byte by byte where the person says, and nothing when they change their mind', async () => {
    const host = await start(null);
    const filePath = join(scratchFolder(), 'chosen.png');
    const bytes = Uint8Array.from([0x89, 0x50, 0, 0xff]);
    seen.saveAnswer = { canceled: false, filePath };
    expect(await host.exportFile({ name: 'chart.png', bytes })).toEqual({ name: 'chosen.png', place: null });
    expect(new Uint8Array(readFileSync(filePath))).toEqual(bytes);
    seen.saveAnswer = { canceled: false, filePath: join(filePath, 'below-a-file.csv') };
    expect(await host.exportFile({ name: 'table.csv', bytes })).toEqual({
      problem: expect.stringContaining('cannot be written'),
    });
    seen.saveAnswer = { canceled: true, filePath: '' };
    expect(await host.exportFile({ name: 'chart.png', bytes })).toBeNull();
  });

  it.each(['run.exe', '../table.csv', 'piece', 'a/b.svg', ''])('exports no file by the name %j', async (name) => {
    await start(null);
    const payload = { name, bytes: new Uint8Array(1) };
    await expect(ipcRenderer.invoke(CHANNELS.exportFile, payload)).rejects.toThrow();
  });

  it('prints a sheet where no script runs, and writes it where the person says', async () => {
    const host = await start(null);
    const filePath = join(scratchFolder(), 'sheet.pdf');
    seen.saveAnswer = { canceled: false, filePath };
    const printed = await host.printPdf({ name: 'piece.pdf', html: '<!doctype html><title>Ø</title>' });
    expect(printed).toEqual({ name: 'sheet.pdf', place: null });
    expect(readFileSync(filePath, 'utf8')).toBe('%PDF-double');
    const sheet = doubledWindow();
    expect(Buffer.from(sheet.address.split(',')[1] ?? '', 'base64').toString()).toContain('<title>Ø</title>');
    expect(sheet.options.webPreferences).toMatchObject({ javascript: false, sandbox: true, nodeIntegration: false });
    expect(sheet.webContents.printed).toMatchObject({ preferCSSPageSize: true, generateTaggedPDF: true });
    expect(sheet.destroyed).toBe(true);
    seen.saveAnswer = { canceled: false, filePath: join(filePath, 'below-a-file.pdf') };
    expect(await host.printPdf({ name: 'piece.pdf', html: '' })).toEqual({
      problem: expect.stringContaining('cannot be written'),
    });
    seen.saveAnswer = { canceled: true, filePath: '' };
    expect(await host.printPdf({ name: 'piece.pdf', html: '' })).toBeNull();
  });

  it('shows the commands of the pages in its menu, and tells the pages which was chosen', async () => {
    const host = await start(null);
    const chosen: string[] = [];
    host.onMenuChosen(() => chosen.push('by a listener that was replaced'));
    host.onMenuChosen((id) => chosen.push(id));
    const shortcut = 'CommandOrControl+Shift+Z';
    host.setMenu([
      { id: 'redo', label: 'Redo', group: 'Edit', shortcut, applies: false },
      { id: 'remove-0', label: 'Remove “Saw & stop”', group: 'Methods', shortcut: null, applies: true },
    ]);
    const items = (head: string) => seen.menu.find(({ label }) => label === head)?.submenu ?? [];
    expect(items('Edit')[0]).toMatchObject({ label: 'Redo', enabled: false, accelerator: shortcut });
    // The pages hear the keys; a menu that took them too would do everything twice.
    expect(items('Edit')[0]?.registerAccelerator).toBe(false);
    expect(items('Edit').map(({ role }) => role)).toContain('copy');
    items('Methods')
      .find(({ label }) => label === 'Remove “Saw && stop”')
      ?.click?.();
    expect(chosen).toEqual(['remove-0']);
  });

  it('takes no menu of another kind', async () => {
    await start(null);
    const send = (menu: unknown) => () => ipcRenderer.send(CHANNELS.setMenu, menu);
    const item = { id: 'a', label: 'A', group: 'File', shortcut: null, applies: true };
    expect(send([item])).not.toThrow();
    expect(send([{ ...item, click: 'quit' }])).toThrow();
    expect(send([{ ...item, shortcut: 'Alt+Everything' }])).toThrow();
    expect(send(Array.from({ length: 201 }, () => item))).toThrow();
  });

  it('opens nothing when the person changes their mind', async () => {
    expect(await (await start(null)).open()).toBeNull();
  });

  it('gives the pages the verbs of a host and nothing else', () => {
    expect(Object.keys(seen.exposed.get('ringtrueHost') as object).sort()).toEqual(
      [...Object.keys(CHANNELS), 'kind'].sort(),
    );
    expect([...seen.exposed.keys()]).toEqual(['ringtrueHost']);
  });

  describe('answers no frame but the main one of its window, and no page but its own', () => {
    const said = async (verb: SpokenVerb): Promise<unknown> => {
      const channel = CHANNELS[verb];
      return seen.hearing.has(channel)
        ? ipcRenderer.send(channel, FITTING[verb])
        : ipcRenderer.invoke(channel, FITTING[verb]);
    };

    it('on none but the channels of the contract, each of one kind', async () => {
      await start(null);
      const open = [...seen.answering.keys(), ...seen.hearing.keys()].sort();
      expect(open).toEqual(
        Object.keys(FITTING)
          .map((verb) => CHANNELS[verb as SpokenVerb])
          .sort(),
      );
      expect([...seen.hearing.keys()].sort()).toEqual(
        [CHANNELS.setMenu, CHANNELS.setProgress, CHANNELS.setEdited].sort(),
      );
    });

    it.each(Object.keys(FITTING) as SpokenVerb[])('%s', async (verb) => {
      await start(null);
      // What fits is taken from the pages, so that a refusal below is for nothing but who sends it.
      await said(verb);
      const foreign = [{ url: 'app://ringtrue/' }, { url: 'https://attacker.example/' }, null];
      for (const frame of foreign) {
        seen.stranger = frame;
        await expect(said(verb), frame?.url).rejects.toThrow('Only the pages of this program');
      }
      seen.stranger = undefined;
      doubledWindow().webContents.mainFrame.url = 'https://attacker.example/app://ringtrue/';
      await expect(said(verb)).rejects.toThrow('Only the pages of this program');
    });
  });

  it('refuses a payload that does not fit', async () => {
    await start(null);
    const fits = { name: 'a.json', text: 'a', place: null };
    for (const wrong of [
      undefined,
      'a',
      {},
      { ...fits, place: 3 },
      { ...fits, path: '/etc/passwd' },
      { ...fits, name: '' },
    ]) {
      await expect(ipcRenderer.invoke('ringtrue:save', wrong)).rejects.toThrow();
    }
    expect(() => ipcRenderer.send('ringtrue:set-edited', 'yes')).toThrow();
  });

  it('opens where it was closed last, unless no screen is there any more', () => {
    const placeFile = join(scratchFolder(), 'state', 'window.json');
    const opened = () => {
      openShellWindow({ onEditsGivenUp, placeFile });
      return doubledWindow();
    };
    expect(opened().options).toMatchObject({ width: 1360, height: 900 });
    doubledWindow().bounds = { x: 300, y: 200, width: 800, height: 640 };
    doubledWindow().maximized = true;
    doubledWindow().emit('close');
    expect(opened().options).toMatchObject({ x: 300, y: 200, width: 800, height: 640 });
    doubledWindow().emit('ready-to-show');
    expect(doubledWindow().maximized).toBe(true);
    doubledWindow().bounds = { x: 5000, y: 200, width: 800, height: 640 };
    doubledWindow().emit('close');
    expect(opened().options).toMatchObject({ width: 1360, height: 900 });
    writeFileSync(placeFile, '{"x": "left"}');
    expect(opened().options).toMatchObject({ width: 1360, height: 900 });
  });

  it('shows how far long work has come, and nothing else', async () => {
    const host = await start(null);
    host.setProgress(0.25);
    host.setProgress(null);
    expect(doubledWindow().progress).toEqual([0.25, -1]);
    for (const wrong of [2, -1, 'half', Number.NaN]) {
      expect(() => ipcRenderer.send(CHANNELS.setProgress, wrong), String(wrong)).toThrow();
    }
  });

  it('hands a file that is opened from outside to whoever takes it last', async () => {
    const host = await start(null);
    const taken: unknown[] = [];
    host.onFileWanted(() => taken.push('by one who was replaced'));
    host.onFileWanted((answer) => taken.push(answer));
    doubledWindow().webContents.send(CHANNELS.onFileWanted, { problem: 'None.' });
    expect(taken).toEqual([{ problem: 'None.' }]);
  });

  it('waits for a page that does not answer, or ends it, as the person says', async () => {
    await start(null);
    seen.messageBoxAnswer = 0;
    doubledWindow().emit('unresponsive');
    expect(doubledWindow().webContents.crashed).toBe(false);
    seen.messageBoxAnswer = 1;
    doubledWindow().emit('unresponsive');
    expect(doubledWindow().webContents.crashed).toBe(true);
  });

  it('keeps Node out of the pages', () => {
    openShellWindow({ onEditsGivenUp, placeFile: join(scratchFolder(), 'window.json') });
    expect(doubledWindow().options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
      preload: expect.stringMatching(/preload\.cjs$/),
    });
    expect(doubledWindow().address).toBe('app://ringtrue/');
  });

  it('leads nowhere but to its own pages', () => {
    refuseOtherPages();
    openShellWindow({ onEditsGivenUp, placeFile: join(scratchFolder(), 'window.json') });
    const { webContents } = doubledWindow();
    expect(webContents.openHandler?.({ url: 'app://ringtrue/' })).toEqual({ action: 'deny' });
    expect(webContents.emit('will-attach-webview')).toBe(true);
    expect(webContents.emit('will-frame-navigate', { isMainFrame: false })).toBe(true);
    for (const name of ['will-navigate', 'will-redirect']) {
      expect(webContents.emit(name, { url: 'app://ringtrue/index.html' }), name).toBe(false);
      for (const url of [
        'https://attacker.example/',
        'file:///etc/passwd',
        'app://other/',
        'app://ringtrue.example/',
      ]) {
        expect(webContents.emit(name, { url }), url).toBe(true);
      }
    }
  });

  it('grants no permission', () => {
    refusePermissions();
    for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'openExternal']) {
      const decide = vi.fn();
      seen.permissionRequest?.({}, permission, decide);
      expect(decide.mock.calls, permission).toEqual([[false]]);
    }
    expect(seen.permissionCheck?.()).toBe(false);
  });

  it('serves its pages with the headers that keep everything foreign out, and no other file', async () => {
    const page = { bytes: new TextEncoder().encode('<!doctype html>'), contentType: 'text/html; charset=utf-8' };
    servePages(new Map([['/', page]]));
    const answer = seen.pages?.(new Request('app://ringtrue/'));
    expect(await answer?.text()).toBe('<!doctype html>');
    expect(answer?.headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(answer?.headers.get('cross-origin-embedder-policy')).toBe('require-corp');
    for (const address of ['app://ringtrue/../package.json', 'app://ringtrue/%2e%2e/package.json', 'app://other/']) {
      expect(seen.pages?.(new Request(address)).status, address).toBe(404);
    }
  });

  it('asks before closing loses edits, and drops what was kept of them only then', async () => {
    const host = await start(null);
    expect(doubledWindow().emit('close')).toBe(false);
    host.setEdited(true);
    seen.messageBoxAnswer = 0;
    expect(doubledWindow().emit('close')).toBe(true);
    expect(onEditsGivenUp).not.toHaveBeenCalled();
    expect(doubledWindow().destroyed).toBe(false);
    seen.messageBoxAnswer = 1;
    doubledWindow().emit('close');
    expect(onEditsGivenUp).toHaveBeenCalledTimes(1);
    await expect.poll(() => doubledWindow().destroyed).toBe(true);
  });
});
