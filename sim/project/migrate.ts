/** Bringing files of older versions up to the present one, one version at a time. */

import { FILE_VERSION } from './keys';
import type { Problem } from './problem';
import { valueText } from './problem';

/** Takes the JSON of one version and gives that of the next, `version` included. */
export type MigrationStep = (file: Record<string, unknown>) => Record<string, unknown>;

/** Steps by the version they start from. Version 1 is the first there is, so no file needs one yet. */
export const STEPS: ReadonlyMap<number, MigrationStep> = new Map();

type Outcome = { ok: true; file: Record<string, unknown> } | { ok: false; problem: Problem };

/**
 * The file at version `present`, or why it cannot be brought there: its version is newer, unknown or not a version.
 * The object handed in is left as it was.
 */
export function migrate(
  file: Record<string, unknown>,
  steps: ReadonlyMap<number, MigrationStep> = STEPS,
  present: number = FILE_VERSION,
): Outcome {
  const refuse = (sentence: string): Outcome => ({ ok: false, problem: { path: 'version', sentence } });
  const seen = file.version;
  if (seen === undefined) return refuse(`Version is missing. Give ${present}.`);
  if (typeof seen !== 'number' || !Number.isInteger(seen)) {
    return refuse(`Version is ${valueText(seen)}, not a whole number. Give ${present}.`);
  }
  if (seen > present) {
    return refuse(
      `The file is of version ${seen}; this Ringtrue reads up to version ${present}. ` +
        'Open it with a newer Ringtrue; the file is left as it is.',
    );
  }
  let current = file;
  for (let version = seen; version < present; version++) {
    const step = steps.get(version);
    if (step === undefined) return refuse(`Version ${seen} is not a version of the project file. Give ${present}.`);
    current = step(copyOf(current));
  }
  return { ok: true, file: current };
}

/** Files are JSON, so this is a true copy. */
function copyOf(file: Record<string, unknown>): Record<string, unknown> {
  return JSON.parse(JSON.stringify(file));
}
