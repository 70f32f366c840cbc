import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Host } from '../../main/contract/host';
import { LARGEST_EXPORT_BYTES } from '../../sim/export/file-size';
import { scratchFolder } from './scratch-folder';

/**
 * What every host must do alike.
 *
 * @param name the host, for the report
 * @param start gives a host that was started with this file, or with none, and keeps what is the user's own in this folder
 */
export function describeHost(
  name: string,
  start: (startFile: string | null, stateFolder: string) => Promise<Host>,
): void {
  describe(`${name}, as every host`, () => {
    function pieceFile(): string {
      const file = join(scratchFolder(), 'piece.ringtrue.json');
      writeFileSync(file, '{ "title": "Ø 280" }');
      return file;
    }

    it('has nothing to open when nothing was named at the start', async () => {
      const host = await start(null, scratchFolder());
      expect(await host.openedAtStart()).toBeNull();
    });

    it('gives the file named at the start, and its text as it is now', async () => {
      const file = pieceFile();
      const host = await start(file, scratchFolder());
      expect(await host.openedAtStart()).toMatchObject({ name: 'piece.ringtrue.json', text: '{ "title": "Ø 280" }' });
      writeFileSync(file, 'changed');
      expect(await host.openedAtStart()).toMatchObject({ text: 'changed' });
    });

    it('says in a sentence that the file named at the start cannot be read', async () => {
      const host = await start(join(scratchFolder(), 'none.json'), scratchFolder());
      expect(await host.openedAtStart()).toEqual({ problem: expect.stringMatching(/none\.json does not exist\./) });
    });

    it('writes back to the place the file came from', async () => {
      const file = pieceFile();
      const host = await start(file, scratchFolder());
      const opened = await host.openedAtStart();
      if (!opened || 'problem' in opened) throw new Error('not opened');
      const { name: opensAs, place } = opened;
      expect(await host.save({ name: opensAs, text: 'Ø 281', place })).toEqual({ name: opensAs, place });
      expect(readFileSync(file, 'utf8')).toBe('Ø 281');
    });

    it('writes to no place that it did not give itself, and says so', async () => {
      const file = pieceFile();
      const host = await start(file, scratchFolder());
      const answer = await host.save({ name: 'piece.ringtrue.json', text: 'changed', place: file });
      expect(answer).toEqual({ problem: expect.stringMatching(/.{20,}\.$/) });
      expect(readFileSync(file, 'utf8')).toBe('{ "title": "Ø 280" }');
    });

    async function openedOn(file: string, stateFolder = scratchFolder()) {
      const host = await start(file, stateFolder);
      const opened = await host.openedAtStart();
      if (!opened || 'problem' in opened) throw new Error('not opened');
      return { host, opened };
    }

    it('keeps the version before, beside the file', async () => {
      const file = pieceFile();
      const { host, opened } = await openedOn(file);
      await host.save({ ...opened, text: 'second' });
      await host.save({ ...opened, text: 'third' });
      expect(readFileSync(file, 'utf8')).toBe('third');
      expect(readFileSync(file.replace('piece.', 'piece.previous.'), 'utf8')).toBe('second');
    });

    it('notices that somebody else changed the file, writes nothing, and writes over it when told to', async () => {
      const file = pieceFile();
      const { host, opened } = await openedOn(file);
      writeFileSync(file, 'theirs');
      expect(await host.save({ ...opened, text: 'ours' })).toEqual({
        problem: expect.stringMatching(/^piece\.ringtrue\.json was changed by another program .*\.$/),
        because: 'changed on disk',
      });
      expect(readFileSync(file, 'utf8')).toBe('theirs');
      expect(await host.save({ ...opened, text: 'ours', overwrite: true })).toEqual({
        name: opened.name,
        place: opened.place,
      });
      expect(readFileSync(file, 'utf8')).toBe('ours');
      expect(readFileSync(file.replace('piece.', 'piece.previous.'), 'utf8')).toBe('theirs');
    });

    it('reads a changed file anew, and then writes it without asking', async () => {
      const file = pieceFile();
      const { host, opened } = await openedOn(file);
      writeFileSync(file, 'theirs');
      const { place } = opened;
      expect(await host.reopen(place ?? '')).toEqual({ name: opened.name, text: 'theirs', place });
      expect(await host.save({ ...opened, text: 'ours' })).toEqual({ name: opened.name, place });
      expect(await host.reopen(file)).toEqual({ problem: expect.stringContaining('was not opened here') });
    });

    it('tells once of each change that somebody else made, and of none that it made itself', async () => {
      const file = pieceFile();
      const { host, opened } = await openedOn(file);
      const place = opened.place ?? '';
      expect(await host.changedOnDisk(place)).toBeNull();
      const saving = host.save({ ...opened, text: 'ours' });
      expect(await host.changedOnDisk(place)).toBeNull();
      await saving;
      expect(await host.changedOnDisk(place)).toBeNull();
      const sentence = 'piece.ringtrue.json was changed by another program since it was opened or saved here.';
      for (const text of ['theirs', 'theirs again', 'ours', 'theirs again']) {
        writeFileSync(file, text);
        expect(await host.changedOnDisk(place)).toBe(text === 'ours' ? null : sentence);
        expect(await host.changedOnDisk(place)).toBeNull();
      }
      // Told or not, it is not written over without being asked for.
      expect(await host.save({ ...opened, text: 'ours' })).toMatchObject({ because: 'changed on disk' });
      await host.reopen(place);
      expect(await host.changedOnDisk(place)).toBeNull();
      writeFileSync(file, 'theirs at last');
      expect(await host.changedOnDisk(file)).toBeNull();
      rmSync(file);
      expect(await host.changedOnDisk(place)).toBeNull();
    });

    it('lists what was open here, the latest first, also after the next start, and without what is gone', async () => {
      const state = scratchFolder();
      const [first, second, gone] = [pieceFile(), pieceFile(), pieceFile()];
      for (const file of [first, gone, second]) await openedOn(file, state);
      rmSync(gone);
      const host = await start(null, state);
      const recent = await host.recent();
      expect(recent.map(({ name, folder }) => join(folder, name))).toEqual([second, first]);
      expect(await host.reopen(recent[1]!.place)).toMatchObject({ text: '{ "title": "Ø 280" }' });
      expect((await host.recent())[0]).toMatchObject({ folder: dirname(first) });
    });

    it('keeps edits aside and gives them back to the next window, until they are dropped', async () => {
      const state = scratchFolder();
      const { host, opened } = await openedOn(pieceFile(), state);
      expect(await host.recovery()).toBeNull();
      const edits = { ...opened, name: 'Öl-Faß.json', text: 'edited, Ø 281' };
      expect(await host.keepRecovery({ ...edits, text: 'older' })).toBeNull();
      expect(await host.keepRecovery(edits)).toBeNull();
      expect(await host.recovery()).toEqual(edits);
      const next = await start(null, state);
      const given = await next.recovery();
      expect(given).toMatchObject({ name: edits.name, text: edits.text });
      // They still know their file, and a change of it.
      expect(await next.save({ ...given!, text: 'saved' })).toMatchObject({ name: 'piece.ringtrue.json' });
      await next.dropRecovery();
      expect(await (await start(null, state)).recovery()).toBeNull();
    });

    it('keeps how the person looks at things for the next start, and nothing that is too much', async () => {
      const state = scratchFolder();
      const host = await start(null, state);
      expect(await host.keptView()).toBeNull();
      await host.keepView('{"theme":"light"}');
      await host.keepView('{"theme":"dark","of":"Öl"}');
      await host.keepView('x'.repeat(20_000));
      expect(await (await start(null, state)).keptView()).toBe('{"theme":"dark","of":"Öl"}');
    });

    it('goes on where nothing can be kept', async () => {
      const state = join(scratchFolder(), 'taken');
      writeFileSync(state, 'a file where the folder should be');
      const host = await start(null, state);
      await host.keepView('{"theme":"dark"}');
      expect(await host.keptView()).toBeNull();
    });

    it('says in a sentence that a file is too large to be exported', async () => {
      const host = await start(null, scratchFolder());
      const bytes = new Uint8Array(LARGEST_EXPORT_BYTES + 1);
      expect(await host.exportFile({ name: 'rings.csv', bytes })).toEqual({
        problem: expect.stringMatching(/^rings\.csv would have 129 MB, more than the 128 MB .*\.$/),
      });
    });

    it('says in a sentence that edits cannot be kept', async () => {
      const state = join(scratchFolder(), 'taken');
      writeFileSync(state, 'a file where the folder should be');
      const host = await start(null, state);
      const answer = await host.keepRecovery({ name: 'a.json', text: 'a', place: null });
      expect(answer).toEqual({ problem: expect.stringMatching(/cannot be written: .*\.$/) });
    });
  });
}
