import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { asFileProblem } from '../../../main/files/file-problem';
import { previousVersionOf } from '../../../main/files/previous-version';
import { bytesMark, ChangedOnDisk, saveProjectFile } from '../../../main/files/save-project-file';
import { scratchFolder } from '../../support/scratch-folder';

function fileHolding(text: string): { folder: string; file: string } {
  const folder = scratchFolder();
  const file = join(folder, 'piece.ringtrue.json');
  writeFileSync(file, text);
  return { folder, file };
}

describe('saving a project file', () => {
  it('names the previous version so that it opens like any project', () => {
    expect(previousVersionOf('/shop/piece.ringtrue.json')).toBe('/shop/piece.previous.ringtrue.json');
    expect(previousVersionOf('/shop/piece.v2.json')).toBe('/shop/piece.v2.previous.json');
    expect(previousVersionOf('/shop.d/piece')).toBe('/shop.d/piece.previous');
  });

  it('keeps the previous version, which saving the same text again does not push out', async () => {
    const { file } = fileHolding('first');
    await saveProjectFile(file, 'second', null);
    await saveProjectFile(file, 'second', null);
    expect(readFileSync(previousVersionOf(file), 'utf8')).toBe('first');
    expect(readFileSync(file, 'utf8')).toBe('second');
  });

  it('makes no previous version of a file that was not there', async () => {
    const file = join(scratchFolder(), 'piece.json');
    await saveProjectFile(file, 'first', bytesMark('what was there before it was removed'));
    expect(readdirSync(join(file, '..'))).toEqual(['piece.json']);
  });

  it('notices a change by one letter that leaves size and time as they were', async () => {
    const { file } = fileHolding('width 70');
    utimesSync(file, 1e9, 1e9);
    const seen = bytesMark('width 70');
    writeFileSync(file, 'width 71');
    utimesSync(file, 1e9, 1e9);
    await expect(saveProjectFile(file, 'ours', seen)).rejects.toBeInstanceOf(ChangedOnDisk);
    expect(readFileSync(file, 'utf8')).toBe('width 71');
    await saveProjectFile(file, 'ours', bytesMark('width 71'));
    expect(readFileSync(file, 'utf8')).toBe('ours');
  });

  it('refuses a file marked read-only, which moving another over it would replace', async () => {
    const { folder, file } = fileHolding('first');
    chmodSync(file, 0o444);
    await expect(saveProjectFile(file, 'second', null)).rejects.toThrow(
      `${file} is marked read-only. Save under another name.`,
    );
    expect(readFileSync(file, 'utf8')).toBe('first');
    expect(readdirSync(folder)).toEqual(['piece.ringtrue.json']);
  });

  it('says that the folder is gone', async () => {
    const folder = join(scratchFolder(), 'shop');
    mkdirSync(folder);
    const file = join(folder, 'piece.json');
    writeFileSync(file, 'first');
    rmSync(folder, { recursive: true });
    await expect(saveProjectFile(file, 'second', bytesMark('first'))).rejects.toThrow(
      `${file} cannot be written: its folder does not exist.`,
    );
  });

  it('has a sentence for each way a disk refuses', () => {
    const sentences = {
      ENOSPC: 'the disk is full. Free some space or choose another disk.',
      EDQUOT: 'your share of the disk is full. Free some space or choose another disk.',
      EROFS: 'the disk is read-only. Choose another folder.',
      EACCES: 'you may not write there. Choose another folder.',
      EBUSY: 'another program holds it. Close it there or save under another name.',
      EFBIG: 'the disk takes no file that large. Choose another disk.',
    };
    for (const [code, sentence] of Object.entries(sentences)) {
      const error = Object.assign(new Error(code), { code });
      expect(asFileProblem('writing', '/shop/a.json', error).message).toBe(
        `/shop/a.json cannot be written: ${sentence}`,
      );
    }
  });

  it('removes what a killed program left beside the file, but not what one may be writing just now', async () => {
    const { folder, file } = fileHolding('first');
    const [old, young, other] = [
      '.piece.ringtrue.json.0123456789ab.part',
      '.piece.ringtrue.json.ba9876543210.part',
      '.other.ringtrue.json.0123456789ab.part',
    ] as const;
    for (const name of [old, young, other]) writeFileSync(join(folder, name), 'half');
    for (const name of [old, other]) utimesSync(join(folder, name), 1e9, 1e9);
    await saveProjectFile(file, 'first', null);
    expect(readdirSync(folder).sort()).toEqual([other, young, 'piece.ringtrue.json'].sort());
  });
});
