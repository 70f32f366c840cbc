/** A failure to read or write a file, said in one sentence that can be shown as it is. */
export class FileProblem extends Error {}

const READING: Record<string, string> = {
  ENOENT: 'does not exist. Check the name and the folder.',
  ENOTDIR: 'does not exist. Check the name and the folder.',
  EACCES: 'may not be read by you. Change its permissions or choose another file.',
  EPERM: 'may not be read by you. Change its permissions or choose another file.',
  EISDIR: 'is a folder. Name a file in it.',
  EBUSY: 'is held by another program. Close it there and open it again.',
  EIO: 'could not be read: the disk does not answer. Check the disk.',
};

const WRITING: Record<string, string> = {
  ENOENT: 'cannot be written: its folder does not exist. Make the folder or choose another.',
  ENOTDIR: 'cannot be written: its folder does not exist. Make the folder or choose another.',
  EACCES: 'cannot be written: you may not write there. Choose another folder.',
  EPERM: 'cannot be written: you may not write there. Choose another folder.',
  EROFS: 'cannot be written: the disk is read-only. Choose another folder.',
  EISDIR: 'cannot be written: a folder has that name. Choose another name.',
  ENOSPC: 'cannot be written: the disk is full. Free some space or choose another disk.',
  EDQUOT: 'cannot be written: your share of the disk is full. Free some space or choose another disk.',
  EFBIG: 'cannot be written: the disk takes no file that large. Choose another disk.',
  EBUSY: 'cannot be written: another program holds it. Close it there or save under another name.',
  ETXTBSY: 'cannot be written: another program holds it. Close it there or save under another name.',
  EIO: 'cannot be written: the disk does not answer. Choose another disk.',
};

/**
 * @param path the file as the person named it
 * @param error what Node threw
 * @returns the same failure as a sentence; a FileProblem is handed through
 */
export function asFileProblem(doing: 'reading' | 'writing', path: string, error: unknown): FileProblem {
  if (error instanceof FileProblem) return error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const known = (doing === 'reading' ? READING : WRITING)[code];
  if (known) return new FileProblem(`${path} ${known}`);
  const verb = doing === 'reading' ? 'read' : 'written';
  return new FileProblem(`${path} could not be ${verb} (${code || String(error)}). Try again or choose another place.`);
}
