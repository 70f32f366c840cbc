import { writeFileSync } from 'node:fs';
import type { TestInfo } from '@playwright/test';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { writeProject } from '../../sim/project/write';

/**
 * The example under another title, as a file holds it.
 *
 * @param trials rings a method: few, which settle soon, unless the test is about many
 * @param change made to the example before it is written
 */
export function projectText(
  title: string,
  trials = 2000,
  change: (project: Project) => Project = (project) => project,
): string {
  const project = change(exampleProject());
  return writeProject({ ...project, title, run: { ...project.run, trials } });
}

/** Writes it into the test's own folder, and gives back its path. */
export function projectFile(info: TestInfo, ...piece: Parameters<typeof projectText>): string {
  const file = info.outputPath('piece.ringtrue.json');
  writeFileSync(file, projectText(...piece));
  return file;
}
