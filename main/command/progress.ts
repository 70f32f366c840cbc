import type { Sink } from './streams';

export interface ProgressLine {
  /** How much of one part is done, 0…1. */
  show: (part: number, share: number) => void;
  clear: () => void;
}

const REDRAW_EVERY_MS = 100;
const CLEAR_LINE = '\r\u001b[K';

/** One line on standard error that is written over; nothing at all unless a person is looking at a terminal. */
export function progressLine(stderr: Sink, parts: number): ProgressLine {
  if (stderr.isTTY !== true) return { show: () => {}, clear: () => {} };
  const shares = new Map<number, number>();
  let drawnMs = Number.NEGATIVE_INFINITY;
  return {
    show: (part, share) => {
      shares.set(part, share);
      const nowMs = performance.now();
      if (nowMs - drawnMs < REDRAW_EVERY_MS) return;
      drawnMs = nowMs;
      const done = [...shares.values()].reduce((sum, share) => sum + share, 0) / parts;
      stderr.write(`${CLEAR_LINE}Simulating … ${Math.floor(100 * done)} %`);
    },
    clear: () => {
      if (shares.size > 0) stderr.write(CLEAR_LINE);
    },
  };
}
