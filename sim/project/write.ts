/** From the document to the text of its file. */
import type { Project } from './document';
import type { AnyKey } from './key';
import { PROJECT } from './keys';

/** A value with its keys in the order of the table; a key that is not there is left out. */
function inOrder(key: AnyKey, value: unknown): unknown {
  if (key.kind === 'list') return (value as unknown[]).map((each) => inOrder(key.of, each));
  if (key.kind !== 'section') return value;
  const given = value as Record<string, unknown>;
  const entries = Object.entries(key.keys).filter(([name]) => given[name] !== undefined);
  return Object.fromEntries(entries.map(([name, inner]) => [name, inOrder(inner, given[name])]));
}

/** Reading it back gives the same project, and writing that the same text. */
export function writeProject(project: Project): string {
  return `${JSON.stringify(inOrder(PROJECT, project), null, 2)}\n`;
}
