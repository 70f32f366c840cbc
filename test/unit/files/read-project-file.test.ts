import { execFileSync } from 'node:child_process';
import { truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readProjectFile } from '../../../main/files/read-project-file';
import { scratchFolder } from '../../support/scratch-folder';

function fileWith(bytes: string | Uint8Array): string {
  const file = join(scratchFolder(), 'piece.json');
  writeFileSync(file, bytes);
  return file;
}

describe('reading a project file', () => {
  it('drops a byte order mark and leaves line ends alone', async () => {
    expect(await readProjectFile(fileWith('\uFEFF{\r\n"title": "Ø"\r\n}'))).toBe('{\r\n"title": "Ø"\r\n}');
  });

  it('refuses what is not there, a folder, and a pipe that would never end', async () => {
    const folder = scratchFolder();
    const pipe = join(folder, 'pipe');
    execFileSync('mkfifo', [pipe]);
    await expect(readProjectFile(join(folder, 'none'))).rejects.toThrow(/none does not exist\. Check the name/);
    await expect(readProjectFile(folder)).rejects.toThrow(/is a folder\. Name a file in it\.$/);
    await expect(readProjectFile(pipe)).rejects.toThrow(/is not a plain file\. Choose a Ringtrue project file\.$/);
  });

  it('refuses a file above 20 MB before reading it, and takes one of 20 MB', async () => {
    const file = fileWith('');
    truncateSync(file, 20 * 1024 * 1024);
    expect(await readProjectFile(file)).toHaveLength(20 * 1024 * 1024);
    truncateSync(file, 20 * 1024 * 1024 + 1);
    await expect(readProjectFile(file)).rejects.toThrow(
      'piece.json has 21 MB, more than the 20 MB a project file may have. Choose a Ringtrue project file.',
    );
  });

  it('refuses what is not UTF-8 text', async () => {
    await expect(readProjectFile(fileWith(new Uint8Array([0x7b, 0xff, 0x7d])))).rejects.toThrow(/is not UTF-8 text/);
  });
});
