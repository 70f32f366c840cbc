import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where a program keeps what belongs to this user on this machine and to no project: unsaved edits, the recent list.
 *
 * @returns the folder's path; `RINGTRUE_STATE` names another one; it need not exist yet
 */
export function stateFolder(): string {
  const { RINGTRUE_STATE, XDG_STATE_HOME, LOCALAPPDATA } = process.env;
  if (RINGTRUE_STATE) return RINGTRUE_STATE;
  if (process.platform === 'win32') return join(LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local'), 'Ringtrue');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Ringtrue');
  return join(XDG_STATE_HOME || join(homedir(), '.local', 'state'), 'ringtrue');
}
