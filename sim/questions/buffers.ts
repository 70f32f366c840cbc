/** The flat arrays in what two threads tell each other are handed over, not copied: whoever sends them is done with them. */
export function buffersIn(message: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  const collect = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    if (part instanceof Map) part.forEach(collect);
    else if (!ArrayBuffer.isView(part)) Object.values(part).forEach(collect);
    else if (part.buffer instanceof ArrayBuffer) found.add(part.buffer);
  };
  collect(message);
  return [...found];
}
