import { rm } from 'node:fs/promises';

/**
 * Removes a browser's throw-away profile: its last processes write into it for a moment after the first has ended.
 *
 * @param profile its folder
 */
export async function removeProfile(profile: string): Promise<void> {
  for (let tries = 0; tries < 20; tries += 1) {
    try {
      await rm(profile, { recursive: true, force: true });
      return;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
  }
}
