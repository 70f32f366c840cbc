/** The least a file must hold, and a way to change one key of a copy. */

export type Json = Record<string, unknown>;

export function bareFile(): Json {
  return {
    format: 'ringtrue',
    version: 1,
    title: 'Bare',
    piece: { sides: 12, size: { by: 'outsideFlats', mm: 400 }, heightMm: 100, thicknessMm: 15 },
    methods: [{ name: 'Only' }],
  };
}

/** A bare file with `value` at a key path such as `methods[0].tilt.biasDeg`; groups on the way are made. */
export function fileWith(changes: Record<string, unknown>): Json {
  const file = bareFile();
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.replaceAll('[', '.').replaceAll(']', '').split('.');
    const last = keys.pop() ?? '';
    let group: Json = file;
    for (const key of keys) {
      group[key] ??= {};
      group = group[key] as Json;
    }
    if (value === undefined) delete group[last];
    else group[last] = value;
  }
  return file;
}
