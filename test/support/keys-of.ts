/** Keys of an object and of what lies in it; of a list those of its first entry. */
export function keysOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.length > 0 && typeof value[0] === 'object' ? [keysOf(value[0])] : [];
  if (typeof value !== 'object' || value === null) return null;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, keysOf(inner)]));
}
