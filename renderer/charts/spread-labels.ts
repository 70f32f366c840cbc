/**
 * Moves labels along one axis just enough that neighbours stand at least `gap` apart and all stay between `from` and
 * `to`, in the order they were in. Labels that do not fit even so are spaced evenly.
 *
 * @param wanted where each label would like to stand
 */
export function spreadLabels(wanted: readonly number[], gap: number, from: number, to: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const room = Math.min(gap, order.length > 1 ? (to - from) / (order.length - 1) : gap);
  const placed: number[] = [];
  let lowest = from;
  for (const i of order) {
    const at = Math.max(wanted[i] ?? from, lowest);
    placed[i] = at;
    lowest = at + room;
  }
  let highest = to;
  for (const i of order.toReversed()) {
    const at = Math.min(placed[i] ?? to, highest);
    placed[i] = at;
    highest = at - room;
  }
  return placed;
}
