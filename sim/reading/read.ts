/** From the text of a project file to the document, or to sentences that say why not. */

import { parseJson } from '../project/json';
import { FILE_FORMAT } from '../project/keys';
import { migrate, STEPS } from '../project/migrate';
import { choiceSentence, valueText } from '../project/problem';
import { type Verdict, validate } from './checks';

export type ReadOutcome = Verdict;

/**
 * Never throws: text of any kind gives either a project that can be computed or at least one problem.
 *
 * @param steps bring files of older versions up to the present one
 */
export function readProject(text: string, steps = STEPS): ReadOutcome {
  const parsed = parseJson(text);
  if (!parsed.ok) return { ok: false, problems: [parsed.problem] };
  return readProjectValue(parsed.value, steps);
}

/** The same for JSON that is parsed already. */
export function readProjectValue(value: unknown, steps = STEPS): ReadOutcome {
  const refuse = (path: string, sentence: string): ReadOutcome => ({ ok: false, problems: [{ path, sentence }] });
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse('', `The file holds ${valueText(value)}, not a project. Give a Ringtrue project file.`);
  }
  const file: Record<string, unknown> = { ...value };
  if (file.format !== FILE_FORMAT) {
    return refuse('format', `This is not a Ringtrue project. ${choiceSentence('Format', [FILE_FORMAT], file.format)}`);
  }
  const migrated = migrate(file, steps);
  if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
  return validate(migrated.file);
}
