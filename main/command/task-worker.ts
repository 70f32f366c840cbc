/** A worker thread of the command line. */
import { setImmediate } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import { workLoop } from '../../sim/questions/work-loop';
import { nowMs } from './thread-pool';

const port = parentPort;
if (port === null)
  throw new Error('task-worker.js is started by ringtrue.js as a worker thread. Run "npm run ringtrue".');

const tell = port.postMessage.bind(port);
port.on('message', workLoop({ tell, listen: () => setImmediate(), nowMs }));
