import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** @returns a folder of its own for the running test, removed when the test is over */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'ringtrue-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
