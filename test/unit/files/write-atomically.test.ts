import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeAtomically } from '../../../main/files/write-atomically';
import { scratchFolder } from '../../support/scratch-folder';

describe('writing a file', () => {
  it('makes it, replaces it whole, and leaves nothing beside it', async () => {
    const folder = scratchFolder();
    const file = join(folder, 'piece.ringtrue.json');
    await writeAtomically(file, 'a longer first text, Ø 280');
    await writeAtomically(file, 'short');
    expect(readFileSync(file, 'utf8')).toBe('short');
    expect(readdirSync(folder)).toEqual(['piece.ringtrue.json']);
  });

  it('never shows half a text to somebody who reads meanwhile', async () => {
    const file = join(scratchFolder(), 'piece.json');
    const texts = ['a', 'b'].map((letter) => letter.repeat(3_000_000));
    await writeAtomically(file, texts[0]!);
    let writing = true;
    const seen = new Set<string>();
    const reader = (async () => {
      while (writing) seen.add(await readFile(file, 'utf8'));
    })();
    for (let round = 0; round < 12; round += 1) await writeAtomically(file, texts[round % 2]!);
    writing = false;
    await reader;
    expect([...seen].filter((text) => !texts.includes(text))).toEqual([]);
    expect(seen.size).toBeGreaterThan(0);
  });

  it('keeps who may read it, and what a link points at', async () => {
    const folder = scratchFolder();
    const file = join(folder, 'real.json');
    const link = join(folder, 'link.json');
    writeFileSync(file, 'old');
    chmodSync(file, 0o600);
    symlinkSync(file, link);
    await writeAtomically(link, 'new');
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(file, 'utf8')).toBe('new');
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  it('says in a sentence why it cannot, and tidies up', async () => {
    const folder = scratchFolder();
    const missing = join(folder, 'missing', 'piece.json');
    await expect(writeAtomically(missing, 'x')).rejects.toThrow(
      `${missing} cannot be written: its folder does not exist. Make the folder or choose another.`,
    );
    const taken = join(folder, 'taken');
    mkdirSync(taken);
    await expect(writeAtomically(taken, 'x')).rejects.toThrow(`${taken} cannot be written: a folder has that name.`);
    expect(readdirSync(folder)).toEqual(['taken']);
  });
});
