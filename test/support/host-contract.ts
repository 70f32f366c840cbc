import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Host } from '../../main/contract/host';
import { scratchFolder } from './scratch-folder';

/**
 * What every host must do alike.
 *
 * @param name the host, for the report
 * @param start gives a host that was started with this file, or with none
 */
export function describeHost(name: string, start: (startFile: string | null) => Promise<Host>): void {
  describe(`${name}, as every host`, () => {
    function pieceFile(): string {
      const file = join(scratchFolder(), 'piece.ringtrue.json');
      writeFileSync(file, '{ "title": "Ø 280" }');
      return file;
    }

    it('has nothing to open when nothing was named at the start', async () => {
      const host = await start(null);
      expect(await host.openedAtStart()).toBeNull();
    });

    it('gives the file named at the start, and its text as it is now', async () => {
      const file = pieceFile();
      const host = await start(file);
      expect(await host.openedAtStart()).toMatchObject({ name: 'piece.ringtrue.json', text: '{ "title": "Ø 280" }' });
      writeFileSync(file, 'changed');
      expect(await host.openedAtStart()).toMatchObject({ text: 'changed' });
    });

    it('says in a sentence that the file named at the start cannot be read', async () => {
      const host = await start(join(scratchFolder(), 'none.json'));
      expect(await host.openedAtStart()).toEqual({ problem: expect.stringMatching(/none\.json does not exist\./) });
    });

    it('writes back to the place the file came from', async () => {
      const file = pieceFile();
      const host = await start(file);
      const opened = await host.openedAtStart();
      if (!opened || 'problem' in opened) throw new Error('not opened');
      const { name: opensAs, place } = opened;
      expect(await host.save({ name: opensAs, text: 'Ø 281', place })).toEqual({ name: opensAs, place });
      expect(readFileSync(file, 'utf8')).toBe('Ø 281');
    });

    it('writes to no place that it did not give itself, and says so', async () => {
      const file = pieceFile();
      const host = await start(file);
      const answer = await host.save({ name: 'piece.ringtrue.json', text: 'changed', place: file });
      expect(answer).toEqual({ problem: expect.stringMatching(/.{20,}\.$/) });
      expect(readFileSync(file, 'utf8')).toBe('{ "title": "Ø 280" }');
    });
  });
}
