import type { Parsed } from '../../../renderer/inputs/parse-quantity';

/** @throws with the sentence where there is no figure */
export function figureOf(parsed: Parsed): number {
  if (!parsed.ok) throw new Error(parsed.sentence);
  return parsed.value;
}
