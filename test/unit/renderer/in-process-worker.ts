import type { SimulationWorker } from '../../../renderer/worker/pool';
import { workLoop } from '../../../renderer/worker/work-loop';

const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** The real work loop and engine on this thread; messages travel by copy and in their own turn, as between threads. */
export function inProcessWorker(): SimulationWorker {
  const worker: SimulationWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => {
      const copy = structuredClone(message);
      setTimeout(() => hear(copy), 0);
    },
  };
  const hear = workLoop((message, transfer) => {
    const data = structuredClone(message, { transfer });
    setTimeout(() => worker.onmessage?.({ data } as MessageEvent<typeof data>), 0);
  }, nextTurn);
  return worker;
}

/** For where there is no page. */
export const nothingToDraw = (): Promise<void> => Promise.resolve();
