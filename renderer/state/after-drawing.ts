/** Work that may wait until what changed stands on the screen: on few cores it would stand in its way. */
import { startTransition, useEffect, useState } from 'react';

/** Where nobody looks there are no frames. */
const LONGEST_FRAME_MS = 100;

/** Resolves when the page has been drawn anew. */
export function drawn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, LONGEST_FRAME_MS);
    requestAnimationFrame(() => setTimeout(resolve));
  });
}

/** The value of before until the page has been drawn with what else changed; what follows from it may take its time. */
export function useAfterDrawing<Value>(value: Value): Value {
  const [shown, setShown] = useState(value);
  useEffect(() => {
    // A value is never skipped for a newer one: while a slider moves there is always a newer one.
    if (shown !== value) void drawn().then(() => startTransition(() => setShown(() => value)));
  }, [shown, value]);
  return shown;
}
