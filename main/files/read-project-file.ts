import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { sizeProblem } from '../../sim/project/file-size';
import { asFileProblem, FileProblem } from './file-problem';
import { bytesMark } from './save-project-file';

/**
 * Reads a project file's text. A byte order mark is dropped; line ends are left as they are.
 *
 * @param path the file to read
 * @returns its text
 * @throws {FileProblem} when it is absent, unreadable, no plain file, too large or not UTF-8 text
 */
export async function readProjectFile(path: string): Promise<string> {
  return (await readFileWithMark(path)).text;
}

/** The same, with the mark of the bytes it was read from, by which a later change of the file is noticed. */
export async function readFileWithMark(path: string): Promise<{ text: string; mark: string }> {
  try {
    // Looked at before it is opened: opening a pipe would wait for somebody to write into it.
    const found = await stat(path);
    if (found.isDirectory()) throw new FileProblem(`${path} is a folder. Name a file in it.`);
    if (!found.isFile()) throw new FileProblem(`${path} is not a plain file. Choose a Ringtrue project file.`);
    const tooLarge = sizeProblem(basename(path), found.size);
    if (tooLarge) throw new FileProblem(tooLarge);
    const bytes = await readFile(path);
    return { text: decode(path, bytes), mark: bytesMark(bytes) };
  } catch (error) {
    throw asFileProblem('reading', path, error);
  }
}

function decode(path: string, bytes: Uint8Array): string {
  try {
    // The decoder drops a leading byte order mark by itself.
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new FileProblem(`${path} is not UTF-8 text. Choose a Ringtrue project file.`);
  }
}
