/** Making one source of a method better or worse by a factor: which figures of the document stand for it. */
import { type Method, type Project, SOURCE_NAMES, type SourceName } from '../project/document';
import { NUMBER_FIELDS } from '../project/fields';

/** Path of a figure within a method (`tilt.sharedDeg`), or within the stock (`stock.cupMm`). */
export type SourceKey =
  | `tilt.${keyof Method['tilt'] & string}`
  | `guide.${keyof Method['guide'] & string}`
  | `width.${keyof Method['width'] & string}`
  | `blade.${keyof Method['blade'] & string}`
  | `assembly.${keyof Method['assembly'] & string}`
  | `stock.${keyof Project['stock'] & string}`;

/** The figures that a source's size is proportional to, the telling one first: from the tables of keys. */
export const SOURCE_KEYS: Readonly<Record<SourceName, readonly SourceKey[]>> = sourceKeys();

function sourceKeys(): Record<SourceName, SourceKey[]> {
  const found = Object.fromEntries(SOURCE_NAMES.map((source) => [source, []])) as unknown as Record<
    SourceName,
    SourceKey[]
  >;
  const figures = Object.entries(NUMBER_FIELDS).map(([path, field]) => {
    return { key: path.replace('methods[].', '') as SourceKey, source: field.source, alsoOf: field.alsoOf };
  });
  for (const { key, source } of figures) if (source) found[source].push(key);
  for (const { key, alsoOf } of figures) if (alsoOf) found[alsoOf].push(key);
  return found;
}

/** Value of a source's figure in the project. */
export function sourceFigure(project: Project, methodIndex: number, key: SourceKey): number {
  const [part, name] = key.split('.') as [string, string];
  const holder = part === 'stock' ? project.stock : project.methods[methodIndex]![part as 'tilt'];
  return Number((holder as unknown as Record<string, unknown>)[name]);
}

/** The project with the figures of some sources of one method multiplied; everything else is shared with the original. */
export function scaledSources(
  project: Project,
  methodIndex: number,
  factors: ReadonlyMap<SourceName, number>,
): Project {
  const method = { ...project.methods[methodIndex]! };
  const stock = { ...project.stock };
  const parts = {
    tilt: { ...method.tilt },
    guide: { ...method.guide },
    width: { ...method.width },
    blade: { ...method.blade },
    assembly: { ...method.assembly },
    stock,
  };
  for (const [source, factor] of factors) {
    for (const key of SOURCE_KEYS[source]) {
      const [part, name] = key.split('.') as [keyof typeof parts, string];
      const holder = parts[part] as unknown as Record<string, number>;
      holder[name] = holder[name]! * factor;
    }
  }
  const { stock: _, ...scaled } = parts;
  const methods = project.methods.map((m, i) => (i === methodIndex ? { ...method, ...scaled } : m));
  return { ...project, stock, methods };
}
