import type { StartWorker } from '../../sim/questions/task-pool';
import { workLoop } from '../../sim/questions/work-loop';

const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** The real work loop and engine on this thread; messages travel by copy and in their own turn, as between threads. */
export const inProcessWorker: StartWorker = (hear) => {
  const heard = workLoop({
    tell: (message, transfer) => {
      const copy = structuredClone(message, { transfer });
      setTimeout(() => hear(copy), 0);
    },
    listen: nextTurn,
    nowMs: () => performance.now(),
  });
  return {
    tell: (message, transfer) => {
      const copy = structuredClone(message, { transfer });
      setTimeout(() => heard(copy), 0);
    },
  };
};

/** For where there is no page. */
export const nothingToDraw = (): Promise<void> => Promise.resolve();
