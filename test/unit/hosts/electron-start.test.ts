/** The start of the desktop program on the stand-in for Electron: its menu, the files it is started with, and its ends. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, test, vi } from 'vitest';
import { CHANNELS } from '../../../main/contract/channels';
import type { Host } from '../../../main/contract/host';
import { readPageFiles } from '../../../main/files/page-files';
import { electronHost } from '../../../renderer/host/electron-host';
import { PROGRAM_VERSION } from '../../../sim/version';
import * as standIn from '../../support/electron-double';
import { scratchFolder } from '../../support/scratch-folder';

// One stand-in for all starts, which otherwise share nothing.
vi.mock('electron', () => standIn);
// The pages as built lie elsewhere than beside the sources.
vi.mock('../../../main/files/page-files', () => ({ readPageFiles: vi.fn(async () => new Map()) }));

const { app, seen } = standIn;

beforeEach(() => {
  vi.resetModules();
  seen.windows.length = 0;
  seen.answering.clear();
  seen.hearing.clear();
  seen.menu = [];
  app.listeners.clear();
  app.did.length = 0;
  app.about = {};
  app.isFirst = true;
  app.userData = scratchFolder();
  process.argv.splice(1);
});

/** Starts the program up to where it waits for Electron; the pages' side is as new as the program. */
async function started(): Promise<Host> {
  await import('../../../main/shell/shell');
  await import('../../../main/shell/preload');
  return electronHost(seen.exposed.get('ringtrueHost') as Host);
}

async function ready(): Promise<void> {
  app.becomeReady();
  await expect.poll(() => seen.windows.length).toBe(1);
}

function pieceFile(name = 'piece.ringtrue.json'): string {
  const path = join(scratchFolder(), name);
  writeFileSync(path, name);
  return path;
}

const rolesUnder = (head: string) => seen.menu.find(({ label }) => label === head)?.submenu?.map(({ role }) => role);

test('the menu zooms, fills the screen and tells about the program, before the pages say anything and after', async () => {
  const host = await started();
  await ready();
  const look = () => {
    expect(rolesUnder('View')).toEqual(expect.arrayContaining(['resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen']));
    expect(rolesUnder('Help')).toContain('about');
    expect(rolesUnder('File')).toEqual(expect.arrayContaining(['close', 'quit']));
  };
  look();
  host.setMenu([{ id: 'theme', label: 'Dark', group: 'View', shortcut: null, applies: true }]);
  look();
  expect(seen.menu.find(({ label }) => label === 'View')?.submenu?.[0]?.label).toBe('Dark');
  expect(app.about).toMatchObject({ applicationName: 'Ringtrue', applicationVersion: PROGRAM_VERSION });
});

test('a file that macOS names before the program is ready is the one opened at the start', async () => {
  const host = await started();
  const path = pieceFile();
  expect(app.emit('open-file', {}, path)).toBe(true);
  expect(seen.windows).toEqual([]);
  await ready();
  expect(await host.openedAtStart()).toMatchObject({ name: 'piece.ringtrue.json', text: 'piece.ringtrue.json' });
});

test('a file that macOS names later is handed to the window that is open', async () => {
  const host = await started();
  await ready();
  expect(await host.openedAtStart()).toBeNull();
  const taken: unknown[] = [];
  host.onFileWanted((answer) => taken.push(answer));
  expect(app.emit('open-file', {}, pieceFile('other.ringtrue.json'))).toBe(true);
  await expect.poll(() => taken).toEqual([expect.objectContaining({ name: 'other.ringtrue.json' })]);
  app.emit('open-file', {}, join(app.userData, 'gone.json'));
  await expect.poll(() => taken[1]).toEqual({ problem: expect.stringContaining('gone.json does not exist.') });
  expect(seen.windows).toHaveLength(1);
});

test('a file named while the window comes up is not lost, whether or not the pages listen already', async () => {
  const host = await started();
  // Another start of the program hands its words over.
  app.emit('second-instance', {}, ['ringtrue', pieceFile('early.ringtrue.json')], '/');
  await ready();
  app.emit('second-instance', {}, ['ringtrue', pieceFile('later.ringtrue.json')], '/');
  expect(await host.openedAtStart()).toMatchObject({ name: 'later.ringtrue.json' });
  app.emit('open-file', {}, pieceFile('last.ringtrue.json'));
  await expect.poll(async () => (await host.recent())[0]?.name).toBe('last.ringtrue.json');
  const taken: unknown[] = [];
  host.onFileWanted((answer) => taken.push(answer));
  await expect.poll(() => taken).toEqual([expect.objectContaining({ name: 'last.ringtrue.json' })]);
});

test('a second program is gone before it has opened or listened to anything', async () => {
  app.isFirst = false;
  await started();
  expect(app.did).toEqual(['quits']);
  expect([...app.listeners.keys(), ...seen.answering.keys(), ...seen.hearing.keys(), ...seen.windows]).toEqual([]);
});

test('the program ends with its window', async () => {
  await started();
  await ready();
  expect(seen.answering.has(CHANNELS.open)).toBe(true);
  expect(app.did).not.toContain('quits');
  app.emit('window-all-closed');
  expect(app.did).toContain('quits');
});

test('a program that cannot start says why and ends as failed', async () => {
  vi.mocked(readPageFiles).mockRejectedValueOnce(new Error('The pages are not there.'));
  await started();
  app.becomeReady();
  await expect.poll(() => app.did).toContain('Ringtrue could not start: The pages are not there.');
  expect(app.did.at(-1)).toBe('exits with 1');
  expect(seen.windows).toEqual([]);
});
