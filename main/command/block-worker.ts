/** A worker thread of the command line: does one task after another for the project it was started with. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Project } from '../../sim/project/document';
import { type Done, type Task, taskDoer } from './block-task';

const port = parentPort;
if (port === null)
  throw new Error('block-worker.js is started by ringtrue.js as a worker thread. Run "npm run ringtrue".');

const doTask = taskDoer(workerData as Project);

/** The flat arrays of a result are handed over, not copied. */
function buffersOf(done: Done): ArrayBuffer[] {
  if (done.kind !== 'block') return [];
  return Object.values(done.result).flatMap((part: unknown) =>
    ArrayBuffer.isView(part) && part.buffer instanceof ArrayBuffer ? [part.buffer] : [],
  );
}

port.on('message', (task: Task) => {
  const done = doTask(task);
  port.postMessage(done, [...new Set(buffersOf(done))]);
});
