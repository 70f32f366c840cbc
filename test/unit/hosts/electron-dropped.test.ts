/** Files dropped on the desktop window: they have a place, and nothing else gets one that way. */
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { beforeEach, expect, test, vi } from 'vitest';
import { CHANNELS } from '../../../main/contract/channels';
import type { Host } from '../../../main/contract/host';
import { ProjectFiles } from '../../../main/files/project-files';
import { answerChannels } from '../../../main/shell/answer-channels';
import { openShellWindow } from '../../../main/shell/window';
import { electronHost } from '../../../renderer/host/electron-host';
import { ipcRenderer, seen } from '../../support/electron-double';
import { scratchFolder } from '../../support/scratch-folder';
import '../../../main/shell/preload';

vi.mock('electron', () => import('../../support/electron-double'));

let host: Host;

beforeEach(() => {
  const placeFile = join(scratchFolder(), 'window.json');
  const shellWindow = openShellWindow({ onEditsGivenUp: async () => {}, placeFile });
  answerChannels(shellWindow, new ProjectFiles(scratchFolder()), () => null);
  host = electronHost(seen.exposed.get('ringtrueHost') as Host);
});

function dropped(path: string): File {
  const file = new File(['not read by the pages'], basename(path));
  seen.dropped.set(file, path);
  return file;
}

test('opens a dropped file with its place, so that saving writes it back', async () => {
  const path = join(scratchFolder(), 'Öl.ringtrue.json');
  writeFileSync(path, 'first');
  const opened = await host.openDropped(dropped(path));
  if (!opened || 'problem' in opened) throw new Error('not opened');
  expect(opened).toMatchObject({ name: 'Öl.ringtrue.json', text: 'first' });
  await host.save({ ...opened, text: 'second' });
  expect(readFileSync(path, 'utf8')).toBe('second');
  expect((await host.recent())[0]).toMatchObject({ name: 'Öl.ringtrue.json', folder: dirname(path) });
});

test('opens nothing that was not dropped, and of what was dropped only files named as projects are', async () => {
  const folder = scratchFolder();
  const secret = join(folder, 'secret');
  writeFileSync(secret, 'key');
  writeFileSync(join(folder, 'secret.json.txt'), 'key');
  // A page may make a file and give it any name: it lies nowhere.
  expect(await host.openDropped(new File(['key'], secret))).toBeNull();
  expect(await host.openDropped({ name: secret, path: secret } as unknown as File)).toEqual({
    problem: expect.stringMatching(/^The program failed to do this\./),
  });
  for (const name of ['secret', 'secret.json.txt']) {
    expect(await host.openDropped(dropped(join(folder, name)))).toEqual({
      problem: `${name} does not end in .json. Drop a Ringtrue project file.`,
    });
  }
  expect(await host.openDropped(dropped(join(folder, 'gone.JSON')))).toEqual({
    problem: expect.stringContaining('gone.JSON does not exist.'),
  });
  for (const wrong of ['piece.json', '../piece.json', '', 3, null, [secret], `/${'a'.repeat(40_000)}.json`]) {
    await expect(ipcRenderer.invoke(CHANNELS.openDropped, wrong), String(wrong).slice(0, 20)).rejects.toThrow();
  }
  expect(await host.recent()).toEqual([]);
});
