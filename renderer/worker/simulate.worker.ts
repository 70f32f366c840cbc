import type { ToWorker } from './protocol';
import { workLoop } from './work-loop';

const hear = workLoop((message, transfer) => postMessage(message, { transfer }));
addEventListener('message', ({ data }: MessageEvent<ToWorker>) => hear(data));
