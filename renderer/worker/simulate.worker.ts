import { type ToWorker, workLoop } from '../../sim/questions/work-loop';

const { port1, port2 } = new MessageChannel();

/** A timer would cost four milliseconds each time; a message to oneself waits behind those of the page and costs none. */
function listen(): Promise<void> {
  return new Promise((resolve) => {
    port1.onmessage = () => resolve();
    port2.postMessage(null);
  });
}

const hear = workLoop({
  tell: (message, transfer) => postMessage(message, { transfer }),
  listen,
  nowMs: () => performance.now(),
});
addEventListener('message', ({ data }: MessageEvent<ToWorker>) => hear(data));
