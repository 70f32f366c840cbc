/** What a page can do only while it is on the screen, such as printing its sheet: it offers it, and the commands find it here. */
import { useEffect, useRef } from 'react';

export type OfferedId = 'print' | 'save-pdf';
type Run = () => void | Promise<void>;

const offers = new Map<OfferedId, Run>();

/** null while nothing on the screen can do it. */
export function offered(id: OfferedId): Run | null {
  return offers.get(id) ?? null;
}

/** Offers it as long as the panel is on the screen. */
export function useOffer(id: OfferedId, run: Run): void {
  const latest = useRef(run);
  latest.current = run;
  useEffect(() => {
    const runLatest = (): void | Promise<void> => latest.current();
    offers.set(id, runLatest);
    return () => {
      if (offers.get(id) === runLatest) offers.delete(id);
    };
  }, [id]);
}
