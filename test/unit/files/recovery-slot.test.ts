import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type KeptEdits, RecoverySlot } from '../../../main/files/recovery-slot';
import { scratchFolder } from '../../support/scratch-folder';

const edits = (text: string): KeptEdits => ({ name: 'a.json', text, path: null, mark: null });

/** Leaves edits as another program would have, that long ago. */
function leave(stateFolder: string, owner: number, text: string, secondsAgo: number): void {
  const folder = join(stateFolder, 'recovery');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `edits-${owner}.json`);
  writeFileSync(file, text.startsWith('not') ? text : JSON.stringify(edits(text)));
  const time = Date.now() / 1000 - secondsAgo;
  utimesSync(file, time, time);
}

/** @returns the number of a program that ended */
function endedProgram(): number {
  return spawnSync(process.execPath, ['-e', '']).pid;
}

it('gives the edits of programs that ended, the latest first, each until it is dropped', async () => {
  const folder = scratchFolder();
  leave(folder, endedProgram(), 'older', 10);
  leave(folder, endedProgram(), 'newer', 5);
  leave(folder, endedProgram(), 'not edits at all', 1);
  const slot = new RecoverySlot(folder);
  expect(await slot.take()).toEqual(edits('newer'));
  expect(await new RecoverySlot(folder).take()).toEqual(edits('newer'));
  await slot.drop();
  expect(await slot.take()).toEqual(edits('older'));
  await slot.drop();
  expect(await slot.take()).toBeNull();
});

it('leaves alone the edits of a program that still runs, unless the machine was started since', async () => {
  const folder = scratchFolder();
  const running = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
  try {
    leave(folder, running.pid!, 'theirs', 1);
    const slot = new RecoverySlot(folder);
    expect(await slot.take()).toBeNull();
    await slot.keep(edits('ours'));
    expect(readdirSync(join(folder, 'recovery'))).toHaveLength(2);
    await slot.drop();
    leave(folder, running.pid!, 'from before the restart', 400 * 24 * 3600);
    expect(await slot.take()).toEqual(edits('from before the restart'));
  } finally {
    running.kill();
    await once(running, 'exit');
  }
});

it('keeps and drops in the order asked for, so that nothing dropped comes back', async () => {
  const slot = new RecoverySlot(scratchFolder());
  void slot.keep(edits('a'));
  void slot.keep(edits('b'));
  void slot.drop();
  expect(await slot.take()).toBeNull();
  void slot.drop();
  void slot.keep(edits('c'));
  expect(await slot.take()).toEqual(edits('c'));
});
