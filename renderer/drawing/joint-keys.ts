/** The arrow keys that go from joint to joint around a ring. */
import type { KeyboardEvent } from 'react';

const ON: readonly string[] = ['ArrowRight', 'ArrowDown'];
const BACK: readonly string[] = ['ArrowLeft', 'ArrowUp'];

/** The joint a key goes to from `joint`, of `count`; null for a key that goes nowhere. The event is then used up. */
export function jointByKey(event: KeyboardEvent, joint: number, count: number): number | null {
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  const last = count - 1;
  const next = ON.includes(event.key)
    ? (joint + 1) % count
    : BACK.includes(event.key)
      ? (joint + last) % count
      : ({ Home: 0, End: last }[event.key] ?? null);
  if (next !== null) event.preventDefault();
  return next;
}
