import { writeFileSync } from 'node:fs';
import type { TestInfo } from '@playwright/test';
import { exampleProject } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';

/** Writes the example under another title into the test's own folder, and gives back its path. */
export function projectFile(info: TestInfo, title: string): string {
  const file = info.outputPath('piece.ringtrue.json');
  writeFileSync(file, writeProject({ ...exampleProject(), title }));
  return file;
}
