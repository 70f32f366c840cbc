import { writeFileSync } from 'node:fs';
import type { TestInfo } from '@playwright/test';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';

/**
 * Writes the example under another title into the test's own folder, and gives back its path.
 *
 * @param trials rings a method; left out: as many as the example has. Few rings settle sooner.
 * @param change made to the example before it is written
 */
export function projectFile(
  info: TestInfo,
  title: string,
  trials?: number,
  change: (project: Project) => Project = (project) => project,
): string {
  const file = info.outputPath('piece.ringtrue.json');
  const project = change(exampleProject());
  const run = { ...project.run, trials: trials ?? project.run.trials };
  writeFileSync(file, writeProject({ ...project, title, run }));
  return file;
}
