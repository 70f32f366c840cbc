import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { LocalHost } from '../../main/local/local-host';
import { ROOT } from '../../main/ready.mjs';

/**
 * Starts the local host as it is built, on a port of its own.
 *
 * @param startFile the project file named at the start
 * @param stateFolder where it keeps what is the user's own
 */
export async function startBuiltHost(startFile: string | undefined, stateFolder: string): Promise<LocalHost> {
  const program: typeof import('../../main/local/serve') = await import(join(ROOT, 'dist', 'main', 'local.js'));
  return program.startLocalHost({ pagesFolder: join(ROOT, 'dist', 'renderer'), startFile, stateFolder });
}

export function emptyStateFolder(): string {
  return mkdtempSync(join(tmpdir(), 'ringtrue-state-'));
}
